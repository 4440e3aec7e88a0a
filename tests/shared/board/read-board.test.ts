import { describe, expect, it } from "vitest";
import { readBoard } from "../../../shared/board/read-board.ts";
import { add, type Change, changed, drop, dropLast, put } from "../change-file.ts";

const face = { x: 0, y: 0, width: 0.2, height: 0.2 };
const good = {
  version: 1,
  id: "demo-board",
  name: "Demo board",
  wiring: {
    kind: "chain",
    pins: { shiftClock: 11, dataOut: 10, latch: 8, load: 7, dataIn: 9, outputEnable: 25, codeIn: 24 },
    lineCount: 24,
    codeCount: 8,
  },
  codes: [
    { code: 1, csaMm2: 1.5, cores: ["brown", "blue", "earth"] },
    { code: 3, csaMm2: 2.5, cores: ["brown", "blue", "earth"] },
  ],
  stations: [
    {
      id: "way-1",
      kind: "way",
      label: "1",
      face,
      entries: [{ letter: "a", side: "feed", lines: { L: 0, N: 1, E: 2 }, codeContacts: [0, 1] }],
    },
    {
      id: "switch-1",
      kind: "plate-switch",
      label: "1",
      face,
      entries: [{ letter: "s", side: "switch", lines: { L: 3, SL: 4, E: 5 } }],
    },
    {
      id: "socket-1",
      kind: "socket-outlet",
      label: "1",
      face,
      entries: [{ letter: "a", side: "feed", lines: { L: 6, N: 7, E: 8 } }],
      front: { L: 9, N: 10, E: 11 },
      settings: { gangs: 2 },
    },
  ],
  probes: { red: 12, black: 13 },
};
const direct = {
  ...good,
  codes: undefined,
  wiring: { kind: "direct", pins: [2, 3, 4, 17, 27, 22, 10, 9, 11, 5, 6, 13, 19, 26] },
  stations: good.stations.map((s) => ({
    ...s,
    entries: s.entries.map((e) => ({ letter: e.letter, side: e.side, lines: e.lines })),
  })),
};

describe("a board description", () => {
  it("is read where it holds together, as a chain and with a pin for each line", () => {
    expect(readBoard(JSON.stringify(good), "demo.json")).toMatchObject({ ok: true, value: good });
    expect(readBoard(JSON.stringify(direct), "demo.json").ok).toBe(true);
  });

  it.each<{ what: string; of?: object; change: Change; field: string; says: string; remedy: string }>([
    {
      what: "a line used twice",
      change: put("stations[2].entries[0].lines.L", 0),
      field: "stations[2].entries[0].lines.L",
      says: "line 0 stands here a second time",
      remedy: "stations[0].entries[0].lines.L",
    },
    {
      what: "a probe on a used line",
      change: put("probes.red", 11),
      field: "probes.red",
      says: "line 11 stands here a second time",
      remedy: "stations[2].front.E",
    },
    {
      what: "a line beyond the chain",
      change: put("probes.black", 24),
      field: "probes.black",
      says: "line 24 is out of range",
      remedy: "use 0 to 23",
    },
    {
      what: "a line without a pin",
      of: direct,
      change: dropLast("wiring.pins"),
      field: "probes.black",
      says: "line 13 is out of range",
      remedy: "a line for each pin",
    },
    {
      what: "a pin used twice in a chain",
      change: put("wiring.pins.load", 11),
      field: "wiring.pins.load",
      says: "BCM pin 11 stands here a second time",
      remedy: "wiring.pins.shiftClock",
    },
    {
      what: "a pin used twice in a direct board",
      of: direct,
      change: put("wiring.pins[3]", 2),
      field: "wiring.pins[3]",
      says: "BCM pin 2 stands here a second time",
      remedy: "wiring.pins[0]",
    },
    {
      what: "a pin that no model has",
      change: put("wiring.pins.load", 60),
      field: "wiring.pins.load",
      says: "out of range",
      remedy: "at most 53",
    },
    {
      what: "a code contact used twice",
      change: put("stations[0].entries[0].codeContacts", [1, 1]),
      field: "stations[0].entries[0].codeContacts[1]",
      says: "code contact 1 stands here a second time",
      remedy: "Keep one",
    },
    {
      what: "a code contact beyond the code chain",
      change: put("stations[0].entries[0].codeContacts", [0, 8]),
      field: "stations[0].entries[0].codeContacts[1]",
      says: "out of range",
      remedy: "use 0 to 7",
    },
    {
      what: "code contacts without a pin to read them",
      change: drop("wiring.pins.codeIn"),
      field: "wiring",
      says: "no way to read them",
      remedy: "pins.codeIn",
    },
    {
      what: "a code that stands for two cables",
      change: put("codes[1].code", 1),
      field: "codes[1].code",
      says: "code 1 stands here a second time",
      remedy: "Keep one",
    },
    {
      what: "a code too great for its contacts",
      change: put("codes[1].code", 4),
      field: "codes[1].code",
      says: "needs more code contacts",
      remedy: "from 1 to 3",
    },
    {
      what: "a station twice",
      change: put("stations[2].id", "way-1"),
      field: "stations[2].id",
      says: "second time",
      remedy: "stations[0].id",
    },
    {
      what: "an entry twice",
      change: add("stations[1].entries", { letter: "s", side: "switch", lines: { L: 14, SL: 15, E: 16 } }),
      field: "stations[1].entries[1].letter",
      says: "second time",
      remedy: "Keep one",
    },
    {
      what: "a neutral on a switch cable",
      change: put("stations[1].entries[0].lines", { L: 3, N: 4, E: 5 }),
      field: "stations[1].entries[0].lines.N",
      says: "the switch side of a plate-switch has no N",
      remedy: "L, SL, E",
    },
    {
      what: "an entry without its earth",
      change: drop("stations[0].entries[0].lines.E"),
      field: "stations[0].entries[0].lines.E",
      says: "missing",
      remedy: "senses E",
    },
    {
      what: "a side its kind has not",
      change: put("stations[0].entries[0].side", "load"),
      field: "stations[0].entries[0].side",
      says: "a way has no load side",
      remedy: "side",
    },
    {
      what: "an entry called as the test face",
      change: put("stations[0].entries[0].letter", "front"),
      field: "stations[0].entries[0].letter",
      says: "test face",
      remedy: "such as a",
    },
    {
      what: "a test face with more than the station",
      change: put("stations[2].front.SL", 20),
      field: "stations[2].front.SL",
      says: "no entry of socket-1 has SL",
      remedy: "only what the station has",
    },
    {
      what: "a setting of another kind",
      change: put("stations[2].settings.fuseRatingA", 13),
      field: "stations[2].settings.fuseRatingA",
      says: "means nothing",
      remedy: "gangs",
    },
    {
      what: "a station over the edge",
      change: put("stations[0].face", { x: 0.9, y: 0, width: 0.2, height: 0.1 }),
      field: "stations[0].face",
      says: "over the edge",
      remedy: "must not exceed 1",
    },
    {
      what: "a field of another kind of board",
      change: put("wiring.kind", "direct"),
      field: "wiring.lineCount",
      says: "no such field",
      remedy: "Known here: kind, pins, electrics.",
    },
  ])("is refused for $what, with field and remedy", ({ of = good, change, field, says, remedy }) => {
    const read = readBoard(changed(of, change), "demo.json");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    const problem = read.problems.find((one) => one.field === field);
    expect(problem, JSON.stringify(read.problems)).toBeDefined();
    expect(problem?.message).toContain(says);
    expect(problem?.remedy).toContain(remedy);
  });
});
