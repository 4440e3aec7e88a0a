import { describe, expect, it } from "vitest";
import type { BoardDescription } from "../../../shared/board/board.schema.ts";
import { contactId, entryId, frontId, stationId } from "../../../shared/board/ids.ts";
import { lacking } from "../../../shared/scenario/fits-board.ts";
import { type Scenario, scenarioSchema } from "../../../shared/scenario/scenario.schema.ts";
import { scenarioEntries } from "../../../shared/scenario/scenario-entries.ts";
import { strip } from "../../../shared/scenario/strip.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { readWiring } from "../../../shared/wiring/read-wiring.ts";

const text = (en: string) => ({ en, pl: en });
const cable = (from: string, to: string) => ({ from, to, csaMm2: 2.5 });
const scenario: Scenario = scenarioSchema.parse({
  version: 1,
  id: "demo",
  revision: 1,
  title: text("Demo"),
  place: text("Demo house"),
  level: 1,
  teaches: text("Something"),
  task: text("Do it"),
  isExistingCircuit: false,
  supply: { earthing: "TT", electrodeOhm: 40 },
  stations: [
    { id: "way-1", kind: "way", entries: { feed: 2 }, settings: { deviceRatingA: 32, deviceCurve: "B" } },
    { id: "socket-1", kind: "socket-outlet", entries: { feed: 3 } },
    {
      id: "fcu-1",
      kind: "fcu",
      entries: { supply: 1, load: 2 },
      settings: { switched: true },
      chosen: ["fuseRatingA"],
    },
  ],
  plan: {
    width: 100,
    height: 80,
    rooms: [],
    routeClasses: { floor: { method: "C" }, loft: { method: "103" } },
    walls: [
      { from: { x: 0, y: 10 }, to: { x: 50, y: 10 }, routeClass: "floor" },
      { from: { x: 50, y: 10 }, to: { x: 100, y: 10 }, routeClass: "loft" },
    ],
    places: [
      { station: "way-1", at: { x: 0, y: 10 } },
      { station: "socket-1", at: { x: 40, y: 10 } },
      { station: "fcu-1", at: { x: 90, y: 10 } },
    ],
  },
  loads: [{ station: "socket-1", powerW: 2000 }],
  parts: { cableCsaMm2: [2.5] },
  requirements: [{ kind: "served", stations: ["socket-1"] }],
  asFound: { cables: [] },
  hints: [text("a"), text("b"), text("c")],
  modelAnswers: [{ cables: [cable("way-1.a", "socket-1.a")] }],
  wrongAnswers: [
    { name: "one", built: { cables: [] }, findings: [{ rule: "not-served" }] },
    { name: "two", built: { cables: [cable("way-1.a", "way-1.b")] }, findings: [{ rule: "not-served" }] },
  ],
  hiddenFaults: [{ kind: "missing-link", station: "socket-1", role: "N" }],
});

const face = { x: 0, y: 0, width: 0.1, height: 0.1 };
const entries = (letters: string, side: "feed" | "supply" | "load") =>
  [...letters].map((letter) => ({ letter, side, lines: {} }));
const board: Pick<BoardDescription, "stations"> = {
  stations: [
    { id: stationId("way-1"), kind: "way", label: "1", face, entries: entries("ab", "feed") },
    {
      id: stationId("socket-1"),
      kind: "socket-outlet",
      label: "1",
      face,
      entries: entries("abcd", "feed"),
      settings: { gangs: 2 },
    },
    { id: stationId("socket-2"), kind: "socket-outlet", label: "2", face, entries: entries("ab", "feed") },
    {
      id: stationId("fcu-1"),
      kind: "fcu",
      label: "1",
      face,
      entries: [...entries("ab", "supply"), ...entries("cd", "load")],
    },
  ],
};
const built = {
  settings: { "fcu-1": { fuseRatingA: 3 } },
  cables: [
    { from: entryId("way-1", "a"), to: entryId("socket-1", "a"), csaMm2: 2.5 },
    { from: entryId("socket-1", "b"), to: entryId("fcu-1", "a"), csaMm2: 2.5, lengthM: 4 },
  ],
};

describe("the wiring of what is built in a scenario", () => {
  const wiring = toWiring({ scenario, board, built });

  it("is a wiring file that the reader takes", () => {
    expect(readWiring(JSON.stringify(wiring), "built.json")).toMatchObject({ ok: true });
  });

  it("gives every cable length and method of the plan, unless it states its own", () => {
    expect(wiring.cables[0]).toMatchObject({ csaMm2: 2.5, lengthM: 6.6, method: "C" });
    expect(wiring.cables[1]).toMatchObject({ csaMm2: 2.5, lengthM: 4, method: "103" });
  });

  it("has all stations of the board, with what scenario, board and learner set", () => {
    const settings = Object.fromEntries(wiring.stations.map((station) => [station.id, station.settings]));
    expect(settings).toEqual({
      "way-1": { deviceRatingA: 32, deviceCurve: "B" },
      "socket-1": { gangs: 2 },
      "socket-2": undefined,
      "fcu-1": { switched: true, fuseRatingA: 3 },
    });
    expect(wiring.stations.find(({ id }) => id === "socket-1")).toMatchObject({ label: "1" });
    expect(wiring.taskStations).toEqual(["way-1", "socket-1", "fcu-1"]);
  });

  it("asks for what the scenario asks for, with its supply and loads", () => {
    expect(wiring).toMatchObject({
      wants: scenario.requirements,
      supply: { earthing: "TT", electrodeOhm: 40 },
      loads: [{ station: "socket-1", powerW: 2000 }],
    });
  });

  it("leaves a cable to a station without a place without a length", () => {
    const stray = { from: entryId("socket-1", "b"), to: entryId("socket-2", "a"), csaMm2: 2.5 };
    expect(toWiring({ scenario, board, built: { cables: [stray] } }).cables).toEqual([stray]);
  });

  it("carries what the board cannot tell, readings and named faults, and nothing where there are none", () => {
    const unknown = [contactId(entryId("socket-1", "c"), "L")];
    const reading = { test: "polarity" as const, way: stationId("way-1"), red: frontId("socket-1", "L") };
    expect(
      toWiring({ scenario, board, built, unknown, readings: [reading], namedFaults: ["missing-link"] }),
    ).toMatchObject({ unknown, readings: [reading], namedFaults: ["missing-link"] });
    expect(wiring).not.toHaveProperty("unknown");
    expect(wiring).not.toHaveProperty("readings");
  });

  it("is the same from the stripped scenario, and without a board has what the scenario asks of one", () => {
    expect(toWiring({ scenario: strip(scenario), board, built })).toEqual(wiring);
    expect(toWiring({ scenario, built }).stations.map(({ id, entries: e }) => [id, e?.length])).toEqual([
      ["way-1", 2],
      ["socket-1", 3],
      ["fcu-1", 3],
    ]);
  });
});

describe("a stripped scenario", () => {
  it("has no answer, fault or hint in it and all the rest", () => {
    const shown = JSON.stringify(strip(scenario));
    for (const word of [
      "modelAnswers",
      "wrongAnswers",
      "hiddenFaults",
      "hints",
      "missing-link",
      "not-served",
    ])
      expect(shown).not.toContain(word);
    expect(strip(scenario)).toMatchObject({ id: "demo", plan: scenario.plan, asFound: { cables: [] } });
  });
});

describe("what a board lacks for a scenario", () => {
  const changed = (change: (stations: BoardDescription["stations"]) => BoardDescription["stations"]) =>
    lacking(scenario, { stations: change(structuredClone(board.stations)) });
  it("is nothing where it has all the scenario needs and more", () => {
    expect(lacking(scenario, board)).toEqual([]);
  });
  it("is a station that is not there", () => {
    expect(changed((s) => s.filter(({ id }) => id !== "fcu-1"))).toEqual([
      { kind: "station", station: "fcu-1", stationKind: "fcu" },
    ]);
  });
  it("is a station of another kind", () => {
    expect(changed((s) => s.map((one) => (one.id === "fcu-1" ? { ...one, kind: "isolator" } : one)))).toEqual(
      [{ kind: "other-kind", station: "fcu-1", stationKind: "fcu", boardKind: "isolator" }],
    );
  });
  it("is an entry, or one of the wrong side", () => {
    const fewer = (s: BoardDescription["stations"]) =>
      s.map((one) => ({ ...one, entries: one.entries.filter(({ letter }) => letter !== "c") }));
    expect(changed(fewer)).toEqual([
      { kind: "entry", station: "socket-1", letter: "c", side: "feed" },
      { kind: "entry", station: "fcu-1", letter: "c", side: "load" },
    ]);
  });
  it("is a setting that is fixed otherwise", () => {
    expect(
      changed((s) => s.map((one) => (one.id === "fcu-1" ? { ...one, settings: { switched: false } } : one))),
    ).toEqual([{ kind: "setting", station: "fcu-1", key: "switched", wanted: true, fixed: false }]);
  });
});

describe("the entries a scenario asks for", () => {
  it("are the first usual letters of each side", () => {
    expect(scenarioEntries({ kind: "fcu", entries: { supply: 1, load: 2 } })).toEqual([
      { letter: "a", side: "supply" },
      { letter: "c", side: "load" },
      { letter: "d", side: "load" },
    ]);
    expect(scenarioEntries({ kind: "ceiling-rose", entries: { feed: 2, switch: 1 } })).toEqual([
      { letter: "a", side: "feed" },
      { letter: "b", side: "feed" },
      { letter: "s", side: "switch" },
    ]);
  });
});
