import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { type Environment, EnvironmentError, readEnvironment } from "../../server/environment.ts";
import { UnusableFileError } from "../../server/library.ts";
import { type OpenedParts, openParts } from "../../server/parts.ts";
import { openForWriting } from "../../server/store/open-database.ts";
import { sentenceFor } from "../../server/start-sentence.ts";
import { StoreError } from "../../server/store/store-error.ts";
import { temporaryFolder } from "./temporary-folder.ts";
import { TestBench } from "./test-bench.ts";

const usual = (data: string, change: Partial<Environment> = {}): Environment => ({
  ...readEnvironment({}),
  data,
  ...change,
});

function opened(environment: Environment): { opened: OpenedParts; notes: string[] } {
  const notes: string[] = [];
  const parts = openParts(environment, (sentence) => void notes.push(sentence));
  onTestFinished(() => parts.close());
  return { opened: parts, notes };
}

describe("the environment", () => {
  it("need not say anything: loopback, port 4710, the simulated board", () => {
    expect(readEnvironment({ SPURWISE_PORT: "" })).toEqual({
      port: 4710,
      leadPort: 4712,
      host: undefined,
      networkPort: 4711,
      names: [],
      data: undefined,
      board: undefined,
      lines: "simulated",
      spinUs: undefined,
      findings: "asked",
      faults: [],
      backUpTo: undefined,
      anchorTo: undefined,
      backUpPassphrase: undefined,
      keepYears: 3,
      showSpeed: 1,
      centre: undefined,
    });
  });

  it("names a centre that the log may go to: over https, or on this machine", () => {
    for (const centre of ["https://store.example.org", "http://127.0.0.1:4720", "http://localhost:4720/"])
      expect(readEnvironment({ SPURWISE_CENTRE: centre }).centre).toBe(centre);
  });

  it.each([
    { name: "SPURWISE_PORT", value: "eighty" },
    { name: "SPURWISE_PORT", value: "70000" },
    { name: "SPURWISE_PORT", value: " " },
    { name: "SPURWISE_PORT", value: "0x10" },
    { name: "SPURWISE_PORT", value: "1e3" },
    { name: "SPURWISE_NETWORK_PORT", value: "-1" },
    { name: "SPURWISE_NAMES", value: "bench.example.org/evil" },
    { name: "SPURWISE_HOST", value: "bench.example.org" },
    { name: "SPURWISE_LINES", value: "magic" },
    { name: "SPURWISE_SPIN_US", value: "-1" },
    { name: "SPURWISE_SPIN_US", value: "1e400" },
    { name: "SPURWISE_KEEP_YEARS", value: "for ever" },
    { name: "SPURWISE_KEEP_YEARS", value: "9".repeat(400) },
    { name: "SPURWISE_CENTRE", value: "http://store.example.org" },
    { name: "SPURWISE_CENTRE", value: "store.example.org" },
    { name: "SPURWISE_CENTRE", value: "ftp://127.0.0.1" },
    { name: "SPURWISE_FINDINGS", value: "never" },
    { name: "SPURWISE_FAULTS", value: "socket-1.a.L" },
    { name: "SPURWISE_FAULTS", value: "socket-1.a.L:broken" },
    { name: "SPURWISE_FAULTS", value: "socket-1:stuck-low" },
  ])("is refused by name where $name is $value", ({ name, value }) => {
    const reading = () => readEnvironment({ [name]: value });
    expect(reading).toThrow(EnvironmentError);
    expect(reading).toThrow(name);
    expect(reading).not.toThrow(/received|NaN|Infinity/);
  });
});

it("says of a passphrase that is too short no letter of it", () => {
  const short = { SPURWISE_BACKUP_PASSPHRASE: "kettle" };
  expect(() => readEnvironment(short)).toThrow(/SPURWISE_BACKUP_PASSPHRASE: twelve letters or more/);
  expect(() => readEnvironment(short)).not.toThrow(/kettle/);
});

describe("a board that is broken on purpose", () => {
  it("is said as contacts and faults, and only for a contact that the simulated board has", () => {
    const faults = "socket-1.a.L:stuck-low, way-1.b.N:loose-contact";
    expect(readEnvironment({ SPURWISE_FAULTS: faults }).faults).toEqual([
      { contact: "socket-1.a.L", fault: "stuck-low" },
      { contact: "way-1.b.N", fault: "loose-contact" },
    ]);
    const opening = (said: Record<string, string>) => () =>
      opened({ ...readEnvironment(said), data: temporaryFolder() });
    expect(opening({ SPURWISE_FAULTS: "socket-9.a.L:stuck-low" })).toThrow(/socket-9\.a\.L/);
    expect(opening({ SPURWISE_FAULTS: faults, SPURWISE_LINES: "gpio" })).toThrow(EnvironmentError);
    expect(opening({ SPURWISE_FAULTS: faults })).not.toThrow();
  });
});

/** What is said of what a start throws; undefined where it throws nothing. */
function sentenceOf(start: () => unknown): string | undefined {
  try {
    start();
    return undefined;
  } catch (error) {
    return sentenceFor(error);
  }
}

describe("what a bench opens at its start", () => {
  it("is every shipped board with every shipped scenario, without a word about any of them", async () => {
    const boards = readdirSync("hardware/boards").filter((file) => file.endsWith(".json"));
    expect(boards.length).toBeGreaterThan(0);
    for (const file of boards) {
      const { opened: parts, notes } = opened(usual(temporaryFolder(), { board: file.replace(".json", "") }));
      expect(parts.parts.bench.scenarios.isRead).toBe(false);
      await parts.readScenarios();
      expect(notes).toEqual([]);
      expect(parts.parts.bench.scenarios.kits.size).toBe(
        readdirSync("scenarios").filter((name) => name.endsWith(".json")).length,
      );
    }
  });

  it("has names to sign in with at the first start, and the bench keeps its id", () => {
    const data = temporaryFolder();
    const first = openParts(usual(data), () => undefined);
    const { records, people } = first.parts.bench;
    const id = records?.log.benchId;
    expect(people.all().length).toBeGreaterThan(5);
    first.close();
    expect(opened(usual(data)).opened.parts.bench.records?.log.benchId).toBe(id);
  });

  it("is its own: a second program is not let into the same data folder, until the first has ended", () => {
    const data = temporaryFolder();
    const first = openParts(usual(data), () => undefined);
    expect(() => opened(usual(data))).toThrow(expect.objectContaining({ code: "in-use" }) as Error);
    first.close();
    expect(opened(usual(data)).opened.parts.bench.records).toBeDefined();
  });

  it("stops with what to do where the board is not there or cannot be read", () => {
    const data = temporaryFolder();
    expect(() => opened(usual(data, { board: "no-such-board" }))).toThrow(UnusableFileError);
    expect(() => opened(usual(data, { board: "no-such-board" }))).toThrow(/SPURWISE_BOARD/);
    const path = join(data, "mine.json");
    writeFileSync(path, '{"version": 1, "id": "mine", "stations": [}');
    expect(() => opened(usual(data, { board: path }))).toThrow(/mine.json: line 1, column 43/);
  });

  it("leaves a damaged log as it is, says so, and lets practice go on beside it, never assessed work", async () => {
    const data = temporaryFolder();
    const path = join(data, "spurwise.db");
    const rubbish = Buffer.alloc(8192, 7);
    writeFileSync(path, rubbish);
    const { opened: parts, notes } = opened(usual(data, { board: "small" }));
    expect(notes).toEqual([expect.stringContaining("damaged") as string]);
    expect(parts.parts.logState()).toMatchObject({ state: "damaged" });
    expect(readFileSync(path).equals(rubbish)).toBe(true);

    const { records, isLogDamaged } = parts.parts.bench;
    const bench = await new TestBench({ parts: { records, isLogDamaged: isLogDamaged === true } }).start();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    expect(bench.view()).toMatchObject({ state: "ready", banners: [{ kind: "log-damaged" }, {}] });
    const start = { scenario: "first-spur" };
    expect(await bench.refusal("start-attempt", { ...start, mode: "assessed" })).toBe("log-damaged");
    expect(await bench.refusal("start-attempt", { ...start, mode: "practice" })).toBe("done");
    const id = bench.attempt().id;
    await bench.stop();
    parts.close();
    // The next start goes on in the same log beside it.
    const again = opened(usual(data, { board: "small" }));
    expect(again.opened.parts.bench.records?.attempts.byId(id)).toMatchObject({ status: "open" });
    expect(readFileSync(path).equals(rubbish)).toBe(true);
  });

  it("says in one sentence what stands in the way of a start, and what to do", () => {
    const sentence = (said: Record<string, string>) =>
      sentenceOf(() => opened({ ...readEnvironment(said), board: "small" }));
    const folder = temporaryFolder();
    const file = join(folder, "a-file");
    writeFileSync(file, "");
    expect(sentence({ SPURWISE_PORT: "eighty" })).toBe(
      'SPURWISE_PORT: "eighty": a port is a whole number from 0 to 65535',
    );
    for (const data of [file, join(file, "in-it")])
      expect(sentence({ SPURWISE_DATA: data })).toMatch(
        /is a file or lies in one. Set SPURWISE_DATA to a folder/,
      );
    writeFileSync(join(folder, "in-use.lock"), Buffer.alloc(4096, 7));
    expect(sentence({ SPURWISE_DATA: folder })).toMatch(/in-use.lock is broken. It holds nothing; remove it/);
    const full = new StoreError("disk-full", { path: "/data/in-use.lock" });
    expect(sentenceFor(full)).toMatch(/^the disk is full: \/data\/in-use.lock/);
    const readOnly = new StoreError("read-only", { path: "/data" });
    expect(sentenceFor(readOnly)).toMatch(/^\/data may not be written/);
  });

  it("tells a disk without room from one that may only be read, at the first start as well", () => {
    const disk = temporaryFolder();
    execFileSync("mount", ["-t", "tmpfs", "-o", "size=16k", "tmpfs", disk]);
    onTestFinished(() => void execFileSync("umount", [disk]));
    const start = (folder: string) => sentenceOf(() => opened(usual(join(disk, folder), { board: "small" })));
    expect(start("new")).toMatch(/^the disk is full: /);
    execFileSync("mount", ["-o", "remount,ro", disk]);
    expect(start("another")).toMatch(/cannot be made. Check whether the disk is there and may be written/);
    expect(start("new")).toMatch(/may not be written. .* whether the disk is read-only/);
    execFileSync("mount", ["-o", "remount,rw", disk]);
  });

  it("refuses a log of a later version in a way that can be told from damage", () => {
    const data = temporaryFolder();
    const database = openForWriting(join(data, "spurwise.db"));
    database.pragma("user_version = 99");
    database.close();
    const refusal = (): unknown => {
      try {
        return opened(usual(data));
      } catch (error) {
        return error instanceof StoreError ? error : undefined;
      }
    };
    expect(refusal()).toMatchObject({ code: "newer-than-program", facts: { found: 99 } });
  });
});
