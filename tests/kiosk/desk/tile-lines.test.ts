import { describe, expect, it } from "vitest";
import { spanText, tileLines } from "../../../kiosk/desk/lead/tile-lines.ts";
import type { BenchReport, LedBench } from "../../../shared/protocol/lead-view.ts";

const report: BenchReport = {
  benchName: "Spurwise 1234",
  nowWallMs: 1_000_000,
  state: "ready",
  clock: "synced",
  faults: [],
  records: "sound",
  person: null,
  isFrozen: false,
  timeUpWallMs: null,
  heldTimeMs: null,
  work: null,
  picture: null,
  face: {} as BenchReport["face"],
  packVersion: 0,
  waitingPackVersion: null,
};
const work: BenchReport["work"] = {
  attempt: "a-1",
  learner: "Bryony Cole",
  title: { en: "The first spur", pl: "Pierwsze odgałęzienie" },
  mode: "practice",
  step: "wire",
  startedWallMs: 900_000,
  readyWallMs: null,
  isWaitingForTrainer: false,
};
const linesOf = (change: Partial<BenchReport>, clockBehindMs = 0, leadWallMs = 1_000_000 + clockBehindMs) => {
  const bench: LedBench = {
    ...{ id: "b-1", name: "Spurwise 1234", isLinked: true, clockBehindMs },
    report: { ...report, ...change },
  };
  return tileLines(bench, leadWallMs, (key) => key);
};
const keys = (lines: { key: string; isSerious: boolean }[]) =>
  lines.map(({ key, isSerious }) => (isSerious ? `${key}!` : key));

describe("the tile of a bench", () => {
  it("says how long somebody has waited by the bench's own clock, however wrong it is", () => {
    const waiting = { work: { ...work, readyWallMs: 940_000 } };
    for (const behindMs of [0, 86_400_000, -3_600_000])
      expect(linesOf(waiting, behindMs).time).toEqual([
        { key: "bench.waits", facts: { time: "1:00" }, isSerious: true },
      ]);
  });

  it("counts the time down, says how long it is up, and that it is frozen", () => {
    expect(linesOf({ timeUpWallMs: 1_090_000 }).time).toEqual([
      { key: "bench.time-left", facts: { time: "1:30" }, isSerious: false },
    ]);
    expect(linesOf({ timeUpWallMs: 1_090_000 }, 0, 1_095_000).time).toEqual([
      { key: "bench.time-up", facts: { time: "0:05" }, isSerious: true },
    ]);
    expect(keys(linesOf({ isFrozen: true }).time)).toEqual(["bench.frozen"]);
    expect(linesOf({ isFrozen: true, heldTimeMs: 90_000 }).time).toEqual([
      { key: "bench.frozen-with", facts: { time: "1:30" }, isSerious: false },
    ]);
  });

  it("names every fault of board, disk and records, and says where there is none", () => {
    expect(keys(linesOf({}).trouble)).toEqual(["bench.well"]);
    expect(linesOf({ faults: ["stuck-low", "no-answer"], records: "disk-full" }).trouble).toEqual([
      { key: "bench.faults", facts: { faults: "fault.stuck-low, fault.no-answer" }, isSerious: true },
      { key: "bench.disk-full", facts: {}, isSerious: true },
    ]);
    expect(keys(linesOf({ state: "no-board" }).trouble)).toEqual(["bench.no-board!"]);
  });

  it("says of its clock how it is kept, and how far off it is where that matters", () => {
    expect(keys(linesOf({}, 1000).clock)).toEqual(["bench.clock-synced"]);
    expect(keys(linesOf({ clock: "unsynced" }, 90_000).clock)).toEqual([
      "bench.clock-unsynced!",
      "bench.clock-behind!",
    ]);
    expect(linesOf({ clock: "battery" }, -20_000).clock[1]).toEqual({
      ...{ key: "bench.clock-ahead", facts: { time: "0:20" }, isSerious: false },
    });
  });

  it("says which pack is in force there and which waits", () => {
    expect(keys(linesOf({}).pack)).toEqual(["bench.no-pack"]);
    expect(linesOf({ packVersion: 3, waitingPackVersion: 4 }).pack.map(({ facts }) => facts)).toEqual([
      { version: 3 },
      { version: 4 },
    ]);
  });

  it("says nothing of a bench that was not heard from", () => {
    const bench: LedBench = { id: "b-1", name: "Spurwise 1234", isLinked: false, clockBehindMs: 0 };
    expect(Object.values(tileLines(bench, 0, (key) => key)).flat()).toEqual([]);
  });
});

describe("a span of time", () => {
  it.each([
    [0, "0:00"],
    [59_600, "1:00"],
    [3_599_000, "59:59"],
    [3_661_000, "1:01:01"],
    [-5000, "0:00"],
  ])("of %i ms reads %s", (ms, text) => expect(spanText(ms)).toBe(text));
});
