import { join } from "node:path";
import { beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { backUpsIn } from "../../../server/keeping/back-up.ts";
import { RecordsKeeper } from "../../../server/keeping/records-keeper.ts";
import { bundle } from "../bundle.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

let program = "";
beforeAll(async () => {
  const { path, remove } = await bundle("server/keeping/records-worker.ts");
  program = path;
  return remove;
});

const hourMs = 3_600_000;

/** Waits for something that another process brings about. */
async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setImmediate(resolve));
}

async function keeperOf(bench: TestBench, more: { backUpTo?: string } = {}) {
  const clock = new ManualClock();
  const notes: string[] = [];
  const damaged: string[] = [];
  const keeper = new RecordsKeeper({
    program,
    path: join(bench.folder, "spurwise.db"),
    backUpTo: more.backUpTo,
    softwareVersion: "0.0.0-test",
    clock,
    timers: clock,
    eventCount: () => bench.rows().length,
    note: (sentence) => notes.push(sentence),
  });
  onTestFinished(() => keeper.stop());
  keeper.start(() => damaged.push("damaged"));
  await until(() => keeper.log.state !== "checking");
  return { keeper, clock, notes, damaged };
}

describe("the keeper of the records", () => {
  it("proves file and chain in a process of its own, and says that they are sound", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const { keeper, notes, damaged } = await keeperOf(bench);
    expect({ log: keeper.log, notes, damaged }).toEqual({ log: { state: "sound" }, notes: [], damaged: [] });
    expect(keeper.backUp).toBeUndefined();
  });

  it("names the first record that was changed, and makes no back-up of it", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    bench.writing.exec("DROP TRIGGER log_is_not_changed; UPDATE log SET wall_ms = 1 WHERE sequence = 2");
    const backUpTo = temporaryFolder();
    const { keeper, notes, damaged } = await keeperOf(bench, { backUpTo });
    expect(keeper.log).toMatchObject({
      state: "damaged",
      firstBadRecord: expect.stringContaining("event 2") as string,
    });
    expect(notes).toHaveLength(1);
    expect(damaged).toEqual(["damaged"]);
    expect(backUpsIn(backUpTo)).toEqual([]);
  });

  it("does what is asked for at the desk one thing at a time, and stops it", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const { keeper } = await keeperOf(bench);
    await until(() => !keeper.isBusy);
    const to = temporaryFolder();
    const task = { what: "back-up", path: join(bench.folder, "spurwise.db"), to } as const;
    const said: string[] = [];
    const ask = () =>
      keeper.do({ ...task, softwareVersion: "0.0.0-test", wallMs: 1 }, ({ type }) => said.push(type));
    const first = ask();
    expect(ask()).toBeUndefined();
    keeper.stopTask();
    await first;
    expect([said, backUpsIn(to)]).toEqual([[], []]);
    await ask();
    expect(said.at(-1)).toBe("backed-up");
    expect(backUpsIn(to)).toHaveLength(1);
  });

  it("backs up once a day where something was written, and says where it cannot", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const backUpTo = temporaryFolder();
    const { keeper, clock } = await keeperOf(bench, { backUpTo });
    await until(() => keeper.backUp !== undefined && !keeper.isBusy);
    expect(keeper.backUp).toMatchObject({ state: "made" });
    expect(backUpsIn(backUpTo)).toHaveLength(1);
    const dayGoesBy = async (): Promise<void> => {
      // A check and then, where it is due, a back-up; each is a process that begins and ends.
      clock.advance(25 * hourMs);
      for (let turn = 0; turn < 100 || keeper.isBusy; turn += 1)
        await new Promise((resolve) => setImmediate(resolve));
    };
    await dayGoesBy();
    expect(backUpsIn(backUpTo)).toHaveLength(1);
    await bench.does("leave-attempt", {});
    await dayGoesBy();
    expect(backUpsIn(backUpTo)).toHaveLength(2);

    const nowhere = await keeperOf(bench, { backUpTo: "/proc/no-stick" });
    await until(() => nowhere.keeper.backUp !== undefined);
    expect(nowhere.keeper.backUp).toMatchObject({ state: "failed" });
    expect(nowhere.notes).toEqual([expect.stringContaining("/proc/no-stick") as string]);
  });
});
