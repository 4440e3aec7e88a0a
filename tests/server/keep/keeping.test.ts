import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { KeepingView } from "../../../shared/protocol/keep-view.ts";
import { backUpsIn } from "../../../server/keeping/back-up.ts";
import type { StartAgain } from "../../../server/keeping/desk-tasks.ts";
import { doRecordsTask } from "../../../server/keeping/do-records-task.ts";
import { besideOf } from "../../../server/keeping/make-ready.ts";
import type { RecordsTask } from "../../../server/keeping/records-task.ts";
import { restoreWanted } from "../../../server/keeping/restore.ts";
import { openForReading } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";
import { testServer } from "../test-server.ts";

const pin = "482915";
const by = { by: "bench", session: null } as const;

async function until(holds: () => Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setImmediate(resolve));
}

/** A bench whose technician is at its own screen; what they ask for is done in this process, when it is let go. */
async function keptBench({ backUpTo = temporaryFolder() } = {}) {
  const started: StartAgain[] = [];
  const asked: RecordsTask[] = [];
  let going: Promise<void> = Promise.resolve();
  let stop: () => void = () => undefined;
  let isHeld = false;
  const made = await testServer({
    hasDemo: false,
    backUpTo,
    keeping: {
      startAgain: (what) => started.push(what),
      keeper: {
        do: (task, hear) => {
          asked.push(task);
          // A process that was stopped says nothing more.
          const stopped = new Promise<void>((resolve) => (stop = resolve));
          return (going = isHeld ? stopped : doRecordsTask(task, hear));
        },
        stopTask: () => stop(),
      },
    },
  });
  const { bench } = made;
  const { people } = bench.parts;
  const staff = await people.list.add({ name: "Ida Nowak", role: "technician", pin }, by);
  await people.list.add({ name: "Bryony Cole", role: "learner", badge: "SPURWISE-DEMO-02" }, by);
  const signIn = () => bench.does("sign-in", { by: "pin", person: "id" in staff ? staff.id : "", pin });
  await signIn();
  const url = `${made.url}/keep-data/keeping`;
  const post = async (path: string, body: object = {}) => {
    const answer = await fetch(url + path, {
      method: "POST",
      headers: { origin: made.url, "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    const said = (await answer.text()).trim();
    await going;
    return answer.ok ? answer.status : said;
  };
  const look = async (folder = "") =>
    (await (await fetch(`${url}?folder=${encodeURIComponent(folder)}`)).json()) as KeepingView;
  return { bench, post, look, signIn, people, backUpTo, started, asked, hold: () => (isHeld = true) };
}

describe("a back-up at the desk", () => {
  it("is made in the folder of the settings or in one that is named, and listed there", async () => {
    const { post, look, backUpTo, bench, asked, hold } = await keptBench();
    expect(await look()).toMatchObject({ task: null, folder: backUpTo, backUps: [], canUpdate: false });
    expect(await post("/back-up", { folder: "", passphrase: "" })).toBe(202);
    const [name = ""] = backUpsIn(backUpTo);
    const { task, backUps } = await look();
    expect(task).toMatchObject({
      what: "back-up",
      state: "done",
      facts: { name, rowCount: bench.rows().length },
    });
    expect(backUps).toMatchObject([{ name, isSealed: false }]);
    const stick = temporaryFolder();
    hold();
    const begun = post("/back-up", { folder: stick, passphrase: "a long passphrase" });
    await until(async () => (await look()).task?.state === "going");
    expect(asked.at(-1)).toMatchObject({ to: stick, passphrase: "a long passphrase" });
    expect(await post("/stop")).toBe(200);
    await begun;
  });

  it("is not made where there is no folder, with a short passphrase", async () => {
    const { post, asked, look } = await keptBench();
    expect(await post("/back-up", { folder: "/nowhere/at-all" })).toBe("no-folder");
    expect(await post("/back-up", { folder: "relative" })).toBe("no-folder");
    expect(await post("/back-up", { passphrase: "short" })).toBe("short-passphrase");
    expect(await post("/back-up", { folder: 5 })).toBe("This is not what this address takes.");
    expect((await look("/nowhere/at-all")).backUps).toBeNull();
    expect([asked, existsSync("/nowhere")]).toEqual([[], false]);
  });

  it("is stopped by whoever asked for it, and nothing of it is left", async () => {
    const { bench, look, backUpTo, hold, post } = await keptBench();
    hold();
    const begun = post("/back-up");
    await until(async () => (await look()).task?.state === "going");
    const stopped = post("/stop");
    await Promise.all([begun, stopped]);
    expect((await look()).task).toMatchObject({ what: "back-up", state: "stopped" });
    expect(readdirSync(backUpTo)).toEqual([]);
    expect(readdirSync(bench.folder).filter((name) => name.startsWith("unfinished"))).toEqual([]);
  });

  it("is for the technician alone", async () => {
    const { url, bench } = await testServer();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-TRAINER" });
    for (const path of ["/back-up", "/restore", "/update", "/stop"]) {
      const headers = { origin: url, "content-type": "application/json" };
      const answer = await fetch(`${url}/keep-data/keeping${path}`, { method: "POST", headers, body: "{}" });
      expect(answer.status, path).toBe(403);
    }
    expect((await fetch(`${url}/keep-data/keeping`)).status).toBe(403);
  });
});

describe("a back-up that is brought back at the desk", () => {
  const soundRows = (folder: string): unknown[] => {
    const database = openForReading(join(folder, "spurwise.db"));
    try {
      expect(verifyLog(database)).toMatchObject({ isSound: true });
      return database.prepare("SELECT type FROM log ORDER BY bench_id, boot, sequence").pluck().all();
    } finally {
      database.close();
    }
  };

  it("can be tried while the bench is at work, and nothing is changed", async () => {
    const { bench, post, look, backUpTo, started } = await keptBench();
    await post("/back-up");
    const [name = ""] = backUpsIn(backUpTo);
    const before = bench.rows().length;
    expect(await post("/restore", { folder: "", name, isTried: true })).toBe(202);
    expect((await look()).task).toMatchObject({
      what: "try-restore",
      state: "done",
      facts: { erasedCount: 0 },
    });
    expect([bench.rows().length, existsSync(besideOf(join(bench.folder, "spurwise.db"))), started]).toEqual([
      before,
      false,
      [],
    ]);
  });

  it("takes the place of the records at the start that follows; who was erased meanwhile stays erased", async () => {
    const { bench, post, backUpTo, started, people, signIn } = await keptBench();
    await post("/back-up");
    const [name = ""] = backUpsIn(backUpTo);
    const { length } = bench.rows();
    await bench.does("sign-out", {});
    await signIn();
    expect(await post("/restore", { folder: "", name, isTried: false })).toBe(202);
    expect(started).toEqual(["records"]);
    // Between the two she is erased: she must not come back.
    const bryony = people.list.learners()[0]?.id ?? "";
    people.list.erase(bryony, by);
    await bench.stop();
    const path = join(bench.folder, "spurwise.db");
    const found = restoreWanted(path, bench.clock, undefined);
    expect(found).toMatchObject({ replaced: expect.stringContaining("replaced-") as string });
    const types = soundRows(bench.folder);
    expect(types.slice(length)).toEqual(["restored", "person-kept"]);
    const again = new TestBench({ folder: bench.folder, hasDemo: false });
    expect(again.parts.people.all().map(({ name: one }) => one)).toEqual(["Ida Nowak"]);
    expect(again.events("restored")).toMatchObject([{ author: { by: "technician" } }]);
    // Once is enough: the next start leaves it as it is.
    expect(restoreWanted(path, bench.clock, undefined)).toBeUndefined();
  });

  it("is not begun while somebody works or waits, nor with a name that does not lie there", async () => {
    const { bench, post, backUpTo, asked, signIn } = await keptBench();
    await post("/back-up");
    const [name = ""] = backUpsIn(backUpTo);
    for (const other of ["../secrets.json", "spurwise-20200101-000000-0000.backup", ""])
      expect(await post("/restore", { folder: "", name: other, isTried: true })).toBe("no-back-up");
    await bench.does("sign-out", {});
    await bench.isWiring("assessed");
    await signIn();
    expect(await post("/restore", { folder: "", name, isTried: false })).toBe("in-use");
    expect(asked).toHaveLength(1);
  });
});
