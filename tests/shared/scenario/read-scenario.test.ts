import { describe, expect, it } from "vitest";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { add, all, type Change, changed, drop, dropLast, put } from "../change-file.ts";

const text = (en: string) => ({ en, pl: en });
const good = {
  version: 1,
  id: "demo",
  revision: 1,
  title: text("Demo"),
  place: text("Demo house"),
  level: 1,
  teaches: text("Something"),
  task: text("Do it"),
  isExistingCircuit: true,
  supply: {},
  stations: [
    {
      id: "way-1",
      kind: "way",
      entries: { feed: 2 },
      settings: { deviceCurve: "B" },
      chosen: ["deviceRatingA"],
    },
    { id: "socket-1", kind: "socket-outlet", entries: { feed: 2 } },
    { id: "fcu-1", kind: "fcu", entries: { supply: 1, load: 1 }, chosen: ["fuseRatingA", "switched"] },
  ],
  plan: {
    width: 100,
    height: 80,
    rooms: [{ name: text("Room"), x: 0, y: 0, width: 100, height: 80 }],
    routeClasses: { floor: { method: "C" } },
    walls: [{ from: { x: 0, y: 10 }, to: { x: 100, y: 10 }, routeClass: "floor", as: "floor" }],
    places: [
      { station: "way-1", at: { x: 10, y: 10 } },
      { station: "socket-1", at: { x: 50, y: 10 } },
      { station: "fcu-1", at: { x: 90, y: 20 } },
    ],
    overrides: [{ a: "way-1", b: "fcu-1", lengthM: 20 }],
  },
  loads: [{ station: "socket-1", powerW: 2000 }],
  parts: { cableCsaMm2: [1.5, 2.5], deviceRatingA: [16, 20], fuseRatingA: [3, 13] },
  requirements: [
    { kind: "served", stations: ["socket-1", "fcu-1"] },
    { kind: "kept", cables: ["socket-1.a~way-1.a"] },
  ],
  asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 4 }] },
  hints: [text("a"), text("b"), text("c")],
  modelAnswers: [
    {
      settings: { "way-1": { deviceRatingA: 20 }, "fcu-1": { fuseRatingA: 3, switched: true } },
      cables: [
        { from: "way-1.a", to: "socket-1.a", csaMm2: 4 },
        { from: "socket-1.b", to: "fcu-1.a", csaMm2: 2.5 },
      ],
    },
  ],
  wrongAnswers: [
    {
      name: "nothing at the FCU",
      built: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 4 }] },
      findings: [{ rule: "not-served" }],
      notMet: [0],
    },
    {
      name: "too small",
      built: { cables: [{ from: "way-1.b", to: "socket-1.a", csaMm2: 1.5 }] },
      findings: [{ rule: "radial-cable" }],
    },
  ],
  hiddenFaults: [{ kind: "open-core", cable: "socket-1.a~way-1.a", role: "L" }],
};

describe("a scenario file", () => {
  it("is read where it holds together", () => {
    expect(readScenario(JSON.stringify(good), "demo.json")).toMatchObject({ ok: true, value: good });
  });

  it.each<{ what: string; change: Change; field: string; says: string; remedy: string }>([
    {
      what: "a station without a place",
      change: dropLast("plan.places"),
      field: "plan.places",
      says: "fcu-1 has no place",
      remedy: "Say where it is",
    },
    {
      what: "a place for nobody",
      change: put("plan.places[1].station", "soket-1"),
      field: "plan.places[1].station",
      says: "no station soket-1",
      remedy: "Did you mean socket-1?",
    },
    {
      what: "two places of a station",
      change: add("plan.places", { station: "way-1", at: { x: 1, y: 10 } }),
      field: "plan.places[3].station",
      says: "second time",
      remedy: "Keep one",
    },
    {
      what: "two stations in one spot",
      change: put("plan.places[1].at", { x: 10, y: 10 }),
      field: "plan.places[1].at",
      says: "a station at 10, 10",
      remedy: "plan.places[0].at",
    },
    {
      what: "a place off the plan",
      change: put("plan.places[1].at.x", 101),
      field: "plan.places[1].at",
      says: "outside the plan",
      remedy: "width and height",
    },
    {
      what: "a wall off the plan",
      change: put("plan.walls[0].to.x", 101),
      field: "plan.walls[0]",
      says: "beyond the plan",
      remedy: "width and height",
    },
    {
      what: "a wall of no length",
      change: put("plan.walls[0].to", { x: 0, y: 10 }),
      field: "plan.walls[0]",
      says: "no length",
      remedy: "two ends",
    },
    {
      what: "a room off the plan",
      change: put("plan.rooms[0].width", 101),
      field: "plan.rooms[0]",
      says: "beyond the plan",
      remedy: "width and height",
    },
    {
      what: "a route class that is not there",
      change: put("plan.walls[0].routeClass", "flor"),
      field: "plan.walls[0].routeClass",
      says: "no route class flor",
      remedy: "Did you mean floor?",
    },
    {
      what: "a station no wall leads to",
      change: put("plan.walls", [
        { from: { x: 0, y: 10 }, to: { x: 60, y: 10 }, routeClass: "floor" },
        { from: { x: 80, y: 20 }, to: { x: 95, y: 20 }, routeClass: "floor" },
      ]),
      field: "plan.walls",
      says: "no wall leads from way-1 to fcu-1",
      remedy: "Add walls",
    },
    {
      what: "an override of an unknown pair",
      change: put("plan.overrides[0].b", "fcu-7"),
      field: "plan.overrides[0].b",
      says: "no station fcu-7",
      remedy: "Did you mean fcu-1?",
    },
    {
      what: "an override that changes nothing",
      change: drop("plan.overrides[0].lengthM"),
      field: "plan.overrides[0]",
      says: "changes nothing",
      remedy: "remove it",
    },
    {
      what: "an override of a pair twice",
      change: add("plan.overrides", { a: "fcu-1", b: "way-1", lengthM: 9 }),
      field: "plan.overrides[1]",
      says: "second time",
      remedy: "plan.overrides[0]",
    },
    {
      what: "a station twice",
      change: put("stations[1].id", "way-1"),
      field: "stations[1].id",
      says: "second time",
      remedy: "stations[0].id",
    },
    {
      what: "entries of a side its kind has not",
      change: put("stations[1].entries", { supply: 1 }),
      field: "stations[1].entries.supply",
      says: "no supply side",
      remedy: "side",
    },
    {
      what: "more entries than its kind has",
      change: put("stations[2].entries.load", 3),
      field: "stations[2].entries.load",
      says: "no more than 2",
      remedy: "2 or fewer",
    },
    {
      what: "a setting of another kind",
      change: put("stations[1].settings", { fuseRatingA: 3 }),
      field: "stations[1].settings.fuseRatingA",
      says: "means nothing at a socket-outlet",
      remedy: "gangs",
    },
    {
      what: "a choice of another kind",
      change: put("stations[1].chosen", ["fuseRatingA"]),
      field: "stations[1].chosen[0]",
      says: "a socket-outlet has no fuseRatingA",
      remedy: "Remove it",
    },
    {
      what: "a choice that is fixed",
      change: put("stations[0].settings.deviceRatingA", 20),
      field: "stations[0].chosen[0]",
      says: "fixed in settings and chosen as well",
      remedy: "one of the two",
    },
    {
      what: "a choice without parts to choose from",
      change: drop("parts.fuseRatingA"),
      field: "parts.fuseRatingA",
      says: "has to choose from it",
      remedy: "List the ratings",
    },
    {
      what: "a load nowhere",
      change: put("loads[0].station", "boiler-1"),
      field: "loads[0].station",
      says: "no station boiler-1",
      remedy: "Use one of",
    },
    {
      what: "a requirement about a station that is not there",
      change: put("requirements[0].stations", ["socket-2"]),
      field: "requirements[0].stations[0]",
      says: "no station socket-2",
      remedy: "socket-1",
    },
    {
      what: "a cable to keep that was never there",
      change: put("requirements[1].cables", ["fcu-1.a~socket-1.b"]),
      field: "requirements[1].cables[0]",
      says: "not there as found",
      remedy: "asFound",
    },
    {
      what: "an as-found cable to an entry not asked of the board",
      change: put("asFound.cables[0].to", "socket-1.c"),
      field: "asFound.cables[0].to",
      says: "no entry socket-1.c",
      remedy: "socket-1.a (feed), socket-1.b (feed)",
    },
    {
      what: "an answer to a station that is not there",
      change: put("modelAnswers[0].cables[1].to", "fcu-2.a"),
      field: "modelAnswers[0].cables[1].to",
      says: "no station fcu-2",
      remedy: "Did you mean fcu-1?",
    },
    {
      what: "an answer with a size that is not offered",
      change: put("modelAnswers[0].cables[1].csaMm2", 6),
      field: "modelAnswers[0].cables[1].csaMm2",
      says: "6 mm² is not among the parts",
      remedy: "1.5, 2.5",
    },
    {
      what: "an answer with a cable of no size",
      change: drop("modelAnswers[0].cables[1].csaMm2"),
      field: "modelAnswers[0].cables[1].csaMm2",
      says: "missing",
      remedy: "size of every cable",
    },
    {
      what: "an answer with a device that is not offered",
      change: put("modelAnswers[0].settings.way-1.deviceRatingA", 32),
      field: "modelAnswers[0].settings.way-1.deviceRatingA",
      says: "32 is not among the parts",
      remedy: "16, 20",
    },
    {
      what: "an answer that sets what nobody may choose",
      change: put("modelAnswers[0].settings.way-1.rcdMa", 30),
      field: "modelAnswers[0].settings.way-1.rcdMa",
      says: "cannot choose it",
      remedy: "chosen at way-1",
    },
    {
      what: "an answer with a setting of another kind",
      change: put("wrongAnswers[0].built.settings", { "socket-1": { switched: true } }),
      field: "wrongAnswers[0].built.settings.socket-1.switched",
      says: "means nothing",
      remedy: "gangs",
    },
    {
      what: "an answer that sets a station not there",
      change: put("wrongAnswers[0].built.settings", { "fcu-3": { switched: true } }),
      field: "wrongAnswers[0].built.settings.fcu-3",
      says: "no station fcu-3",
      remedy: "fcu-1",
    },
    {
      what: "cables as found in a new installation",
      change: put("isExistingCircuit", false),
      field: "isExistingCircuit",
      says: "there is an existing circuit",
      remedy: "made dead",
    },
    {
      what: "an existing circuit without a cable",
      change: all(
        put("asFound.cables", []),
        dropLast("requirements"),
        put("modelAnswers[0].cables[0].csaMm2", 2.5),
        put("wrongAnswers[0].built.cables[0].csaMm2", 2.5),
      ),
      field: "isExistingCircuit",
      says: "no existing circuit",
      remedy: "agree",
    },
    {
      what: "two hints",
      change: dropLast("hints"),
      field: "hints",
      says: "there are 2 hints",
      remedy: "a nudge, the rule, the place",
    },
    {
      what: "two wrong answers of one name",
      change: put("wrongAnswers[1].name", "nothing at the FCU"),
      field: "wrongAnswers[1].name",
      says: "second time",
      remedy: "Keep one",
    },
    {
      what: "a wrong answer with nothing wrong",
      change: put("wrongAnswers[1].findings", []),
      field: "wrongAnswers[1]",
      says: "nothing is wrong",
      remedy: "State the findings",
    },
    {
      what: "a requirement not met that is not there",
      change: put("wrongAnswers[0].notMet", [2]),
      field: "wrongAnswers[0].notMet",
      says: "no requirement 2",
      remedy: "0 to 1",
    },
    {
      what: "a line of the task held by a requirement that is not there",
      change: put("asks", [{ number: 1, heldBy: [0, 2] }]),
      field: "asks[0].heldBy",
      says: "no requirement 2",
      remedy: "0 to 1",
    },
    {
      what: "a line of the task that nothing holds",
      change: put("asks", [{ number: 1, heldBy: [] }]),
      field: "asks[0].heldBy",
      says: "length",
      remedy: "at least 1",
    },
    {
      what: "a finding of a rule that is not there",
      change: put("wrongAnswers[0].findings[0].rule", "not-servd"),
      field: "wrongAnswers[0].findings[0].rule",
      says: "not known",
      remedy: 'Did you mean "not-served"?',
    },
    {
      what: "a single wrong answer",
      change: dropLast("wrongAnswers"),
      field: "wrongAnswers",
      says: "length",
      remedy: "at least 2",
    },
    {
      what: "a hidden fault in no cable",
      change: put("hiddenFaults[0].cable", "way-1.a"),
      field: "hiddenFaults[0].cable",
      says: "is no cable",
      remedy: "two entries in order",
    },
    {
      what: "a hidden fault where no entry is",
      change: put("hiddenFaults[0].cable", "socket-1.c~way-1.a"),
      field: "hiddenFaults[0].cable",
      says: "no entry socket-1.c",
      remedy: "Entries of socket-1",
    },
    {
      what: "a missing link where no station is",
      change: put("hiddenFaults[0]", { kind: "missing-link", station: "socket-5", role: "L" }),
      field: "hiddenFaults[0].station",
      says: "no station socket-5",
      remedy: "socket-1",
    },
    {
      what: "a text without its translation",
      change: drop("task.pl"),
      field: "task.pl",
      says: "missing",
      remedy: "a text in double quotes",
    },
  ])("is refused for $what, with field and remedy", ({ change, field, says, remedy }) => {
    const read = readScenario(changed(good, change), "demo.json");
    expect(read.ok).toBe(false);
    if (read.ok) return;
    const problem = read.problems.find((one) => one.field === field);
    expect(problem, JSON.stringify(read.problems)).toBeDefined();
    expect(problem?.message).toContain(says);
    expect(problem?.remedy).toContain(remedy);
  });
});
