import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cableId, type ContactId, type EntryId, type StationId } from "../../../shared/board/ids.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import { nameOfFault } from "../../../shared/electrical/fault-name.ts";
import { asBuilt } from "../../../shared/electrical/hidden-faults.ts";
import { readInsulation, readOhm } from "../../../shared/electrical/meter.ts";
import type { MeterSetup } from "../../../shared/electrical/meter-setup.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { huntLevels, type HuntLevel, hiddenFaultKinds } from "../../../shared/wiring/hunt-words.ts";
import { drawFaults } from "../../../server/attempt/draw-faults.ts";
import { hiddenAtStart } from "../../../server/attempt/hidden-at-start.ts";
import { scenarioKit } from "../../../server/library.ts";

const bytes = readFileSync("scenarios/other-each-time.json");
const read = readScenario(bytes.toString("utf8"), "other-each-time.json");
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const scenario = read.value;
const wiring = toWiring({ scenario, built: scenario.asFound });
const way = "way-1" as StationId;
const circuit = { cables: wiring.cables, ways: new Set([way]) };
const seeds = Array.from({ length: 120 }, (_, seed) => seed * 7919);
const ends = wiring.cables.flatMap(({ from, to }) => [from, to]);
const copper = copperOf(wiring);

const released: MeterSetup = {
  ringEnds: new Map([[way, { ends: ["way-1.a", "way-1.b"] as [EntryId, EntryId], state: "released" }]]),
};

/** Insulation at the way, of what is in: with all cables, and with each of them out, which takes its fault along. */
function insulationWithout(faults: readonly HiddenFault[], out: string | undefined): string[] {
  const cables = wiring.cables.filter(({ from, to }) => cableId(from, to) !== out);
  const left = faults.filter((fault) => !("cable" in fault) || fault.cable !== out);
  const built = asBuilt(copperOf({ ...wiring, cables }), left);
  return ["way-1.a", "way-1.b", "way-1.c"].flatMap((end) =>
    (["LN", "LE", "NE"] as const).map(([a, b]) =>
      JSON.stringify(
        readInsulation(built, {}, { red: `${end}.${a}` as ContactId, black: `${end}.${b}` as ContactId }),
      ),
    ),
  );
}

/** Everything a learner can read: each core piece by piece with the ends apart, and insulation cable by cable. */
function readings(faults: readonly HiddenFault[]): string[] {
  const built = asBuilt(copper, faults);
  const pieces = wiring.cables.flatMap(({ from, to }) =>
    (["L", "N", "E"] as const).map((role) => {
      const probes = { red: `${from}.${role}`, black: `${to}.${role}`, nulledOhm: 0.08 };
      return JSON.stringify(readOhm(built, released, probes as never));
    }),
  );
  const joints = ends.flatMap((one) =>
    ends
      .filter((two) => two > one && two.split(".")[0] === one.split(".")[0])
      .flatMap((two) =>
        (["L", "N", "E"] as const).map((role) => {
          const probes = { red: `${one}.${role}`, black: `${two}.${role}`, nulledOhm: 0.08 };
          return JSON.stringify(readOhm(built, released, probes as never));
        }),
      ),
  );
  const insulation = [undefined, ...wiring.cables.map(({ from, to }) => cableId(from, to))].flatMap((out) =>
    insulationWithout(faults, out),
  );
  return [...pieces, ...joints, ...insulation];
}

describe("faults drawn by a level", () => {
  it("are the same for the same seed, and of all seeds every kind comes up at the levels that have all", () => {
    for (const level of huntLevels)
      expect(drawFaults(level, circuit, 42)).toEqual(drawFaults(level, circuit, 42));
    const kinds = seeds.flatMap((seed) => drawFaults(3, circuit, seed).map(({ kind }) => kind));
    expect(new Set(kinds)).toEqual(new Set(hiddenFaultKinds));
  });

  it.each<[HuntLevel, number]>([
    [1, 1],
    [2, 1],
    [3, 1],
    [4, 2],
  ])("hide as many as level %i has: %i, each in another place", (level, count) => {
    for (const seed of seeds) {
      const places = drawFaults(level, circuit, seed).map((fault) => nameOfFault(fault).place);
      expect(new Set(places).size).toBe(count);
    }
  });

  it("can each be told with the meter from a sound circuit and from every other that was drawn", () => {
    const known = new Map<string, string>([[readings([]).join(), "sound"]]);
    for (const seed of seeds) {
      const faults = drawFaults(3, circuit, seed);
      const name = JSON.stringify(faults.map(nameOfFault));
      const seen = readings(faults).join();
      expect([seed, known.get(seen) ?? name]).toEqual([seed, name]);
      known.set(seen, name);
    }
  });

  it("are new at each go, and the log says by which seed", () => {
    const kit = scenarioKit(bytes, "other-each-time.json");
    if ("problems" in kit) throw new Error("unusable");
    const [event] = hiddenAtStart(kit, () => 7919);
    expect(event?.content).toEqual({ faults: drawFaults(3, circuit, 7919), seed: 7919 });
    expect(hiddenAtStart(kit, () => 12)[0]?.content.faults).not.toEqual(event?.content.faults);
  });
});
