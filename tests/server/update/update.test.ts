import { generateKeyPairSync, sign } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Health } from "../../../shared/protocol/socket-events.ts";
import { DeskTasks } from "../../../server/keeping/desk-tasks.ts";
import { doRecordsTask } from "../../../server/keeping/do-records-task.ts";
import { makeUpdate } from "../../../server/update/make-update.ts";
import { programToStart } from "../../../server/update/program-to-start.ts";
import {
  incomingIn,
  isOnTrial,
  programIn,
  readChoice,
  writeChoice,
} from "../../../server/update/programs.ts";
import { watchTrial } from "../../../server/update/trial-watch.ts";
import { isNewer } from "../../../server/update/update-manifest.ts";
import { openForReading, openForWriting, schemaVersion } from "../../../server/store/open-database.ts";
import { verifyLog } from "../../../server/store/verify-log.ts";
import { isBenchFree } from "../../../server/bench/is-bench-free.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { TestBench } from "../test-bench.ts";

const keysOf = () => {
  const { privateKey, publicKey } = generateKeyPairSync("ed25519");
  return {
    privateKey: privateKey.export({ type: "pkcs8", format: "pem" }).toString(),
    publicKey: publicKey.export({ type: "spki", format: "pem" }).toString(),
  };
};
const publisher = keysOf();

const lock = (version: string, packages: object = { "node_modules/zod": { version: "4.6.7" } }) =>
  JSON.stringify({ name: "spurwise", version, packages: { "": { version }, ...packages } });

/** A program that listens, changes the records it is given, and says of its health what it is told to. */
const programSaying = (health: object) => `
  import { createServer } from "node:http";
  import { appendFileSync } from "node:fs";
  import { join } from "node:path";
  appendFileSync(join(process.env.SPURWISE_DATA, "spurwise.db"), "it was here");
  const server = createServer((_request, answer) => answer.end(${JSON.stringify(JSON.stringify(health))}));
  server.listen(0, "127.0.0.1", () => console.log("Spurwise: http://127.0.0.1:" + server.address().port));
`;

const healthy = (version: string) => ({ isReady: true, log: { state: "sound" }, softwareVersion: version });

interface Made {
  version?: string;
  health?: object;
  main?: string;
  lockText?: string;
  privateKey?: string;
}

/** A signed update, as whoever publishes it makes it. */
function updateOf({ version = "0.2.0", health, main, lockText, privateKey }: Made = {}): string {
  const [root, to] = [temporaryFolder(), temporaryFolder()];
  const put = (path: string, text: string): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  put("package.json", JSON.stringify({ name: "spurwise", type: "module", version }));
  put("package-lock.json", lockText ?? lock(version));
  put("dist/server/main.js", main ?? programSaying(health ?? healthy(version)));
  put("scenarios/first.json", "{}");
  makeUpdate({ root, to, privateKey: privateKey ?? publisher.privateKey, wallMs: 1 });
  return to;
}

/** The tasks of a technician on a data folder, done in this process. */
function tasksOn(data: string, softwareVersion: string, isFree: () => boolean) {
  const started: string[] = [];
  let going: Promise<void> | undefined;
  const tasks = new DeskTasks({
    keeper: { do: (task, hear) => (going = doRecordsTask(task, hear)), stopTask: () => undefined },
    path: join(data, "spurwise.db"),
    passphrase: undefined,
    update: { publicKey: publisher.publicKey, modules: temporaryFolder(), lock: join(data, "lock.json") },
    softwareVersion,
    clock: new ManualClock(),
    isFree,
    isBoardReady: () => true,
    startAgain: (what) => started.push(what),
  });
  const take = async (from: string) => {
    expect(tasks.update(from)).toBe(true);
    await going;
    return tasks.view;
  };
  return { tasks, started, take };
}

/** A bench of version 0.1.0 with some records, on which nobody works unless asked for. */
async function benchOf({ isWorking = false } = {}) {
  const bench = await new TestBench().start();
  await bench.isWiring();
  if (!isWorking) await bench.does("leave-attempt", {});
  const data = bench.folder;
  writeFileSync(join(data, "lock.json"), lock("0.1.0"));
  const made = tasksOn(data, "0.1.0", () => isBenchFree(bench.bench.core));
  return { bench, data, ...made, start: () => programToStart(data, "0.1.0", () => undefined) };
}

const headOf = (data: string): unknown => {
  const database = openForReading(join(data, "spurwise.db"));
  try {
    return database.prepare("SELECT hex(hash) FROM log_end").pluck().get();
  } finally {
    database.close();
  }
};

const nothingChanged = (data: string, head: unknown): void => {
  expect([existsSync(incomingIn(data)), readChoice(data), headOf(data)]).toEqual([false, undefined, head]);
};

describe("an update that is signed, newer, whole and healthy on a copy of the records", () => {
  it("is started at the next start, on trial, and its trial ends once it is healthy", async () => {
    const { data, take, started, start } = await benchOf();
    const head = headOf(data);
    expect(await take(updateOf())).toMatchObject({ state: "done", facts: { version: "0.2.0" } });
    expect(started).toEqual(["program"]);
    // It wrote into the records it was given: those of the bench are as they were.
    expect(headOf(data)).toBe(head);
    const main = await start();
    expect(main).toBe(join(programIn(data, "0.2.0"), "dist/server/main.js"));
    expect(readFileSync(join(programIn(data, "0.2.0"), "scenarios/first.json"), "utf8")).toBe("{}");
    expect(isOnTrial(data, programIn(data, "0.2.0"))).toBe(true);
    const clock = new ManualClock();
    const told = { isReady: false, log: { state: "checking", eventCount: 0 } as Health["log"] };
    watchTrial({ data, timers: clock, health: () => told, failed: () => expect.fail("it is healthy") });
    clock.advance(5000);
    expect(isOnTrial(data, programIn(data, "0.2.0"))).toBe(true);
    [told.isReady, told.log] = [true, { state: "sound", eventCount: 0 }];
    clock.advance(5000);
    expect(isOnTrial(data, programIn(data, "0.2.0"))).toBe(false);
    expect(await start()).toBe(main);
  });

  it("gives way to a program that is installed later and is newer", async () => {
    const { data, take } = await benchOf();
    await take(updateOf());
    expect(await programToStart(data, "0.3.0", () => undefined)).toBeUndefined();
  });
});

describe("an update is not taken, and nothing is changed, where", () => {
  it.each<[string, () => string, string, string | RegExp]>([
    [
      "somebody else signed it",
      () => updateOf({ privateKey: keysOf().privateKey }),
      "wrong-signature",
      "update.sig",
    ],
    [
      "its manifest was changed",
      () => {
        const folder = updateOf();
        const path = join(folder, "update.json");
        writeFileSync(path, readFileSync(path, "utf8").replace('"0.2.0"', '"0.9.0"'));
        return folder;
      },
      "wrong-signature",
      "update.sig",
    ],
    [
      "a file of it is damaged",
      () => {
        const folder = updateOf();
        writeFileSync(join(folder, "scenarios/first.json"), "[]");
        return folder;
      },
      "damaged-file",
      "scenarios/first.json",
    ],
    [
      "its manifest names a file outside it",
      () => {
        const folder = updateOf();
        const path = join(folder, "update.json");
        const text = readFileSync(path, "utf8").replace("scenarios/first.json", "../outside.txt");
        writeFileSync(path, text);
        writeFileSync(
          join(folder, "update.sig"),
          sign(null, Buffer.from(text), publisher.privateKey).toString("base64"),
        );
        return folder;
      },
      "no-update",
      "update.json",
    ],
    ["it is the version that runs", () => updateOf({ version: "0.1.0" }), "not-newer", "0.1.0, 0.1.0"],
    ["it is older", () => updateOf({ version: "0.0.9" }), "not-newer", "0.0.9, 0.1.0"],
    [
      "it was made for other packages",
      () => updateOf({ lockText: lock("0.2.0", {}) }),
      "other-packages",
      /lock/,
    ],
    ["nothing lies there", () => temporaryFolder(), "no-update", "update.json"],
    [
      "its records are damaged on the copy",
      () => updateOf({ health: { ...healthy("0.2.0"), log: { state: "damaged" } } }),
      "not-healthy",
      "damaged records",
    ],
    [
      "it ends",
      () => updateOf({ main: `console.error("no such board"); process.exit(1);` }),
      "not-healthy",
      /no such board/,
    ],
    [
      "it is another version than it says",
      () => updateOf({ health: healthy("0.5.0") }),
      "not-healthy",
      "version 0.5.0",
    ],
  ])("%s", async (_why, made, problem, reason) => {
    const { data, take, started } = await benchOf();
    const head = headOf(data);
    const view = await take(made());
    expect(view).toMatchObject({ state: "failed", problem });
    expect(view?.facts["reason"]).toMatch(reason);
    nothingChanged(data, head);
    expect(started).toEqual([]);
  });

  it("somebody works, also where they begin while it is tried", async () => {
    const { bench, data, take, started } = await benchOf({ isWorking: true });
    expect(isBenchFree(bench.bench.core)).toBe(false);
    expect(await take(updateOf())).toMatchObject({ state: "failed", problem: "in-use" });
    expect([existsSync(incomingIn(data)), readChoice(data), started]).toEqual([false, undefined, []]);
    // Whoever waits for a check is not sent away either.
    bench.atRest();
    await bench.does("leave-attempt", {});
    await bench.isWiring("assessed");
    await bench.does("ready", {});
    expect(await take(updateOf())).toMatchObject({ state: "failed", problem: "in-use" });
  });
});

describe("a program on trial", () => {
  it("that says that it is not healthy gives way at the next start, and the records go back where it changed their form", async () => {
    const { bench, data, take, start } = await benchOf();
    await take(updateOf());
    await bench.stop();
    const head = headOf(data);
    expect(await start()).toBeDefined();
    const writing = openForWriting(join(data, "spurwise.db"));
    writing.pragma(`user_version = ${schemaVersion + 1}`);
    writing.close();
    const clock = new ManualClock();
    const failed: string[] = [];
    const log = { state: "damaged", eventCount: 0 } as const;
    watchTrial({
      data,
      timers: clock,
      health: () => ({ isReady: true, log }),
      failed: () => failed.push("failed"),
    });
    expect(failed).toEqual(["failed"]);
    const said: string[] = [];
    expect(await programToStart(data, "0.1.0", (sentence) => said.push(sentence))).toBeUndefined();
    expect(said.join("\n")).toContain("was not healthy");
    const database = openForReading(join(data, "spurwise.db"));
    expect(verifyLog(database)).toMatchObject({ isSound: true });
    // One event more: that they were brought back.
    expect(
      database.prepare("SELECT hex(previous_hash) FROM log ORDER BY boot DESC, sequence DESC").pluck().get(),
    ).toBe(head);
    database.close();
    expect(readChoice(data)).toBeUndefined();
  });

  it("that never comes so far is started three times, and then the one before is", async () => {
    const { data, take, start } = await benchOf();
    await take(updateOf());
    writeChoice(data, { current: "0.2.0", previous: null, trial: null });
    const older = await start();
    await tasksOn(data, "0.2.0", () => true).take(updateOf({ version: "0.3.0" }));
    const seen = [await start(), await start(), await start(), await start(), await start()];
    const newer = join(programIn(data, "0.3.0"), "dist/server/main.js");
    expect(seen).toEqual([newer, newer, newer, older, older]);
  });
});

describe("the order of versions", () => {
  it.each([
    ["0.1.1", "0.1.0", true],
    ["0.10.0", "0.9.9", true],
    ["1.0.0", "0.99.99", true],
    ["0.1.0", "0.1.0", false],
    ["0.1.0", "0.1.1", false],
    ["0.9.9", "0.10.0", false],
  ])("%s after %s: %s", (version, than, isAfter) => {
    expect(isNewer(version, than)).toBe(isAfter);
  });
});
