import { describe, expect, it } from "vitest";
import { keepEn, type KeepKey } from "../../../kiosk/desk/keep/keep-en.ts";
import { keepPl } from "../../../kiosk/desk/keep/keep-pl.ts";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import { machineLines } from "../../../kiosk/desk/keep/machine-lines.ts";
import type { MachineView } from "../../../shared/protocol/keep-view.ts";

const gapsOf = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([gap]) => gap).sort();

const words = {
  t: (key: KeepKey, facts: Record<string, Fact> = {}) =>
    keepEn[key].replace(/\{(\w+)\}/g, (gap, name: string) => String(facts[name] ?? gap)),
  bytes: (bytes: number) => `${bytes} B`,
  number: String,
  span: (ms: number) => `${ms} ms`,
  time: (wallMs: number) => `at ${wallMs}`,
};

const day = 24 * 3_600_000;
const well: MachineView = {
  power: { now: [], sinceStart: [] },
  clock: { state: "synced", nowWallMs: 10 * day },
  disk: { freeBytes: 50, sizeBytes: 100, programWritesBytesADay: 7, diskWritesBytesADay: 9 },
  commit: { medianMs: 3, worstMs: 20, count: 40 },
  database: { sizeBytes: 5, schemaVersion: 9, sqliteVersion: "3.51" },
  log: { state: "sound", eventCount: 12, boot: 4, head: "abcdef0123456789" },
  board: { id: "small", state: "ready", lines: "gpio", hasGpioLibrary: true, selfCheck: null, faultCount: 0 },
  versions: { software: "1", rulePack: "2", node: "v20", system: "Linux" },
  backUp: { isChosen: true, state: null, newestWallMs: 9 * day },
  centre: { sent: { boot: 3, sequence: 14 } },
  upMs: { program: 1, machine: 2 },
  memoryBytes: 3,
};
const lineOf = (change: Partial<MachineView>, what: string) =>
  machineLines({ ...well, ...change }, words).find((line) => line.what === what);

describe("the words of what keeps a bench", () => {
  it("fill the same gaps in both languages", () => {
    for (const key of Object.keys(keepEn) as KeepKey[]) {
      expect(keepPl[key], key).not.toBe("");
      expect(gapsOf(keepPl[key]), key).toEqual(gapsOf(keepEn[key]));
    }
  });
});

describe("the page about the machine", () => {
  it("leaves no gap open and calls nothing serious where all is well", () => {
    for (const { what, said, isSerious } of machineLines(well, words)) {
      expect(said, what).not.toMatch(/[{}]/);
      expect(isSerious, what).toBe(false);
    }
  });

  it("says where a figure cannot be read on this machine, and never that it is good", () => {
    expect(lineOf({ power: null }, "power")).toMatchObject({ said: "cannot be read here", isSerious: false });
    const disk = { ...well.disk, programWritesBytesADay: null, diskWritesBytesADay: null };
    expect(lineOf({ disk }, "wear")?.said.match(/cannot be read here/g)).toHaveLength(2);
  });

  it.each<[string, string, Partial<MachineView>]>([
    ["low voltage now", "power", { power: { now: ["undervoltage"], sinceStart: ["undervoltage"] } }],
    ["low voltage earlier", "power", { power: { now: [], sinceStart: ["undervoltage"] } }],
    ["a clock that is not set", "clock", { clock: { state: "unsynced", nowWallMs: 0 } }],
    ["a disk with less than a tenth free", "disk", { disk: { ...well.disk, freeBytes: 9 } }],
    ["a slow disk", "commit", { commit: { medianMs: 101, worstMs: 300, count: 5 } }],
    ["a damaged log", "chain", { log: { ...well.log, state: "damaged", firstBadRecord: "boot 2 record 7" } }],
    ["no board", "board", { board: { ...well.board, state: "no-board", problem: "no-gpio" } }],
    ["faults of the board", "board", { board: { ...well.board, faultCount: 2 } }],
    [
      "a self-check with faults",
      "self-check",
      { board: { ...well.board, selfCheck: { faultCount: 1, wallMs: 0 } } },
    ],
    ["no folder for back-ups", "back-up", { backUp: { ...well.backUp, isChosen: false } }],
    ["no back-up yet", "back-up", { backUp: { ...well.backUp, newestWallMs: null } }],
    ["a back-up of four days ago", "back-up", { backUp: { ...well.backUp, newestWallMs: 6 * day } }],
    ["a centre that is not reached", "centre", { centre: { sent: null, trouble: { why: "not-reached" } } }],
    [
      "another log at the centre",
      "centre",
      { centre: { sent: { boot: 1, sequence: 2 }, trouble: { why: "set-aside" } } },
    ],
    ["a centre that takes nothing", "centre", { centre: { sent: null, trouble: { why: "unknown-bench" } } }],
    [
      "a back-up that failed",
      "back-up",
      { backUp: { ...well.backUp, state: { state: "failed", problem: "disk-full" } } },
    ],
  ])("calls %s serious, and says it without a gap", (_what, line, change) => {
    const found = lineOf(change, line);
    expect(found?.isSerious).toBe(true);
    expect(found?.said).not.toMatch(/[{}]/);
  });
});
