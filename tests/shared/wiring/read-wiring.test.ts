import { describe, expect, it } from "vitest";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";
import { add, type Change, changed, drop, put } from "../change-file.ts";

const good = {
  version: 1,
  title: "a ring of two",
  supply: { earthing: "TN-C-S", zeOhm: 0.35 },
  stations: [
    { id: "way-1", kind: "way", settings: { deviceRatingA: 32, deviceCurve: "B" } },
    { id: "socket-1", kind: "socket-outlet", settings: { gangs: 2 } },
    {
      id: "socket-2",
      kind: "socket-outlet",
      entries: [
        { letter: "a", side: "feed" },
        { letter: "b", side: "feed" },
      ],
    },
    { id: "fcu-1", kind: "fcu", settings: { fuseRatingA: 3, switched: true } },
  ],
  cables: [
    { from: "way-1.a", to: "socket-1.a", csaMm2: 2.5, lengthM: 8 },
    {
      from: "socket-1.b",
      to: "socket-2.a",
      csaMm2: 2.5,
      lengthM: 8,
      conductors: [
        ["L", "N"],
        ["N", "L"],
      ],
    },
    { from: "socket-2.b", to: "way-1.b", csaMm2: 2.5, lengthM: 8 },
  ],
  loads: [{ station: "socket-1", powerW: 2000 }],
  unknown: ["socket-1.c.L"],
  wants: [
    { kind: "served", stations: ["socket-1"] },
    { kind: "kept", cables: ["socket-1.a~way-1.a"] },
  ],
  taskStations: ["way-1", "socket-1"],
  readings: [
    { test: "continuity-cpc", way: "way-1", red: "socket-1.front.L", black: "way-1.c.E", resistanceOhm: 0.2 },
  ],
};

describe("a wiring file", () => {
  it("is read where it holds together", () => {
    const read = readWiring(JSON.stringify(good), "ring.json");
    expect(read).toMatchObject({ ok: true, value: good });
  });

  it.each<{ what: string; change: Change; field: string; says: string; remedy: string }>([
    {
      what: "a station twice",
      change: put("stations[2].id", "socket-1"),
      field: "stations[2].id",
      says: "socket-1 stands here a second time",
      remedy: "stations[1].id",
    },
    {
      what: "an entry letter twice",
      change: put("stations[2].entries[1].letter", "a"),
      field: "stations[2].entries[1].letter",
      says: "second time",
      remedy: "Keep one",
    },
    {
      what: "a side its kind has not",
      change: put("stations[2].entries[1].side", "supply"),
      field: "stations[2].entries[1].side",
      says: "a socket-outlet has no supply side",
      remedy: "side",
    },
    {
      what: "a setting of another kind",
      change: put("stations[1].settings.fuseRatingA", 3),
      field: "stations[1].settings.fuseRatingA",
      says: "means nothing at a socket-outlet",
      remedy: "gangs",
    },
    {
      what: "a cable from a station that is not there",
      change: put("cables[0].from", "wai-1.a"),
      field: "cables[0].from",
      says: "there is no station wai-1",
      remedy: "Did you mean way-1?",
    },
    {
      what: "a cable to an entry that is not there",
      change: put("cables[1].to", "socket-2.c"),
      field: "cables[1].to",
      says: "there is no entry socket-2.c",
      remedy: "socket-2.a (feed), socket-2.b (feed)",
    },
    {
      what: "a cable twice",
      change: add("cables", { from: "socket-1.a", to: "way-1.a" }),
      field: "cables[3]",
      says: "socket-1.a~way-1.a stands here a second time",
      remedy: "cables[0]",
    },
    {
      what: "a whole cable from an entry to itself",
      change: put("cables[0].to", "way-1.a"),
      field: "cables[0]",
      says: "begins and ends at one entry",
      remedy: "conductors",
    },
    {
      what: "a conductor position its entry has not",
      change: put("cables[1].conductors[0]", ["L", "SL"]),
      field: "cables[1].conductors[0][1]",
      says: "there is no contact socket-2.a.SL",
      remedy: "socket-2.a.L, socket-2.a.N, socket-2.a.E",
    },
    {
      what: "a conductor twice",
      change: put("cables[1].conductors[1]", ["L", "N"]),
      field: "cables[1].conductors[1]",
      says: "second time",
      remedy: "Keep one",
    },
    {
      what: "a contact joined to itself",
      change: add("cables", { from: "way-1.c", to: "way-1.c", conductors: [["L", "L"]] }),
      field: "cables[3].conductors[0]",
      says: "joins a contact to itself",
      remedy: "two contacts",
    },
    {
      what: "a load nowhere",
      change: put("loads[0].station", "socket-9"),
      field: "loads[0].station",
      says: "there is no station socket-9",
      remedy: "Did you mean socket-1?",
    },
    {
      what: "a load where nothing draws current",
      change: put("loads[0].station", "way-1"),
      field: "loads[0].station",
      says: "nothing takes current at a way",
      remedy: "socket outlet",
    },
    {
      what: "a want about a station that is not there",
      change: put("wants[0].stations", ["boiler-1"]),
      field: "wants[0].stations[0]",
      says: "no station boiler-1",
      remedy: "Use one of: way-1",
    },
    {
      what: "a ring wanted of a socket outlet",
      change: put("wants[0]", { kind: "shape", of: "socket-1", shape: "ring" }),
      field: "wants[0].of",
      says: "socket-1 is not a way",
      remedy: "Name a way",
    },
    {
      what: "a feed wanted through what has no fuse",
      change: put("wants[1]", { kind: "through-fcu", stations: ["socket-1"], fcu: "socket-2" }),
      field: "wants[1].fcu",
      says: "socket-2 is not a fused connection unit",
      remedy: "Name an FCU",
    },
    {
      what: "a switch that is not there to switch by",
      change: put("wants[1]", { kind: "own-switch", stations: ["socket-1"], by: "fcu-2" }),
      field: "wants[1].by",
      says: "no station fcu-2",
      remedy: "Did you mean fcu-1?",
    },
    {
      what: "a requirement to size the circuit of what is no way",
      change: put("wants[1]", { kind: "sized", way: "socket-1" }),
      field: "wants[1].way",
      says: "not a way",
      remedy: "Name a way",
    },
    {
      what: "thrift without sizes to choose from",
      change: put("wants[1]", { kind: "thrift", csaMm2: [2.5] }),
      field: "wants[1].csaMm2",
      says: "length",
      remedy: "at least 2",
    },
    {
      what: "a kept cable between entries that are not there",
      change: put("wants[1].cables", ["socket-2.c~way-1.a"]),
      field: "wants[1].cables[0]",
      says: "there is no entry socket-2.c",
      remedy: "Entries of socket-2",
    },
    {
      what: "an unknown contact that is not there",
      change: put("unknown", ["socket-2.c.L"]),
      field: "unknown[0]",
      says: "there is no contact socket-2.c.L",
      remedy: "contact",
    },
    {
      what: "a task station that is not there",
      change: add("taskStations", "fcu-9"),
      field: "taskStations[2]",
      says: "no station fcu-9",
      remedy: "Did you mean fcu-1?",
    },
    {
      what: "a reading at a way that is none",
      change: put("readings[0].way", "fcu-1"),
      field: "readings[0].way",
      says: "fcu-1 is not a way",
      remedy: "Name a way",
    },
    {
      what: "a reading with a probe on nothing",
      change: put("readings[0].red", "socket-1.front.SL"),
      field: "readings[0].red",
      says: "no contact socket-1.front.SL",
      remedy: "contact",
    },
    {
      what: "an id in capitals",
      change: put("stations[0].id", "Way-1"),
      field: "stations[0].id",
      says: '"Way-1" cannot be read',
      remedy: "lower-case words joined by dashes",
    },
    {
      what: "a length in another field",
      change: put("cables[0].length", 8),
      field: "cables[0].length",
      says: "no such field",
      remedy: '"lengthM"',
    },
    {
      what: "no version",
      change: drop("version"),
      field: "version",
      says: "missing",
      remedy: "Write 1.",
    },
  ])("is refused for $what, with field and remedy", ({ change, field, says, remedy }) => {
    const read = readWiring(changed(good, change), "ring.json");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    const problem = read.problems.find((one) => one.field === field);
    expect(problem, JSON.stringify(read.problems)).toBeDefined();
    expect(problem?.file).toBe("ring.json");
    expect(problem?.message).toContain(says);
    expect(problem?.remedy).toContain(remedy);
  });

  // Whatever a learner can build can be written down: a mistake is a finding, never an unusable file.
  it.each<{ what: string; change: Change }>([
    {
      what: "a lead from L to N within one entry",
      change: add("cables", { from: "way-1.c", to: "way-1.c", conductors: [["L", "N"]] }),
    },
    {
      what: "two cables stacked on one entry",
      change: add("cables", { from: "way-1.a", to: "fcu-1.a" }),
    },
    { what: "a bypass of a fuse", change: add("cables", { from: "fcu-1.a", to: "fcu-1.c" }) },
    { what: "a feed on the load side", change: add("cables", { from: "way-1.c", to: "fcu-1.d" }) },
    {
      what: "a cable of no known size or length",
      change: add("cables", { from: "way-1.c", to: "fcu-1.b" }),
    },
    { what: "nothing built at all", change: put("cables", []) },
  ])("can state $what", ({ change }) => {
    const read = readWiring(changed(good, change), "ring.json");
    expect(read.ok, JSON.stringify(read)).toBe(true);
  });
});
