import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cableId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { copperOf } from "../../../shared/electrical/copper.ts";
import { asBuilt } from "../../../shared/electrical/hidden-faults.ts";
import { judgeReading } from "../../../shared/electrical/judge-reading.ts";
import { runLoads } from "../../../shared/electrical/load-run.ts";
import { judge } from "../../../shared/rules/judge.ts";
import type { HiddenFault } from "../../../shared/wiring/hidden-fault.schema.ts";
import { type Wiring, wiringSchema } from "../../../shared/wiring/wiring.schema.ts";
import { testDepth } from "../../depth.ts";
import { holds } from "../../holds.ts";
import { anyStatedWiring } from "../rules/any-wiring.ts";

/** Where in a value a number is not finite, by the path to it. */
function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (typeof value !== "object" || value === null) return [];
  const entries = value instanceof Map ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([key, each]) => notFinite(each, `${path}.${String(key)}`));
}

const extremes = {
  lengthM: fc.constantFrom(0.01, 10, 1000, undefined),
  csaMm2: fc.constantFrom(0.1, 1, 2.5, 16, 1000, undefined),
  powerW: fc.constantFrom(0.1, 3000, 100_000),
  ohm: fc.constantFrom(0.001, 0.35, 100_000),
  ratingA: fc.constantFrom(0.1, 5, 45, 1000),
};

/** As any stated wiring, with every quantity at an end of what the format allows. */
const hostile: fc.Arbitrary<Wiring> = fc
  .record({
    wiring: anyStatedWiring,
    lengthM: fc.infiniteStream(extremes.lengthM),
    csaMm2: fc.infiniteStream(extremes.csaMm2),
    powerW: fc.infiniteStream(extremes.powerW),
    ratingA: fc.infiniteStream(extremes.ratingA),
    earthing: fc.constantFrom("TN-C-S", "TN-S", "TT"),
    zeOhm: extremes.ohm,
    electrodeOhm: extremes.ohm,
  })
  .map(({ wiring, lengthM, csaMm2, powerW, ratingA, earthing, zeOhm, electrodeOhm }): Wiring => {
    const next = <T>(stream: fc.Stream<T>): T => stream.next().value as T;
    const settings = (of: Wiring["stations"][number]["settings"] = {}) =>
      Object.fromEntries(
        Object.entries(of).map(([key, value]) => [
          key,
          key === "deviceRatingA" || key === "fuseRatingA" || key === "ratingA" ? next(ratingA) : value,
        ]),
      );
    const stated = <T extends object>(value: T): T =>
      Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as T;
    return wiringSchema.parse({
      ...wiring,
      supply: { earthing, zeOhm, electrodeOhm },
      stations: wiring.stations.map((station) => ({ ...station, settings: settings(station.settings) })),
      cables: wiring.cables.map((cable) =>
        stated({ ...cable, lengthM: next(lengthM), csaMm2: next(csaMm2), cpcCsaMm2: next(csaMm2) }),
      ),
      loads: wiring.loads?.map((load) => ({ ...load, powerW: next(powerW) })),
    });
  });

describe("a wiring that nobody would build, its quantities at the ends of what the format allows", () => {
  it("is judged without a figure or a fact that is not a finite number", () => {
    holds(
      fc.property(hostile, (wiring) => {
        const { findings, suppressed, figures } = judge(wiring);
        expect(notFinite({ findings, suppressed, figures })).toEqual([]);
        const model = buildModel(wiring);
        const readings = wiring.readings ?? [];
        for (const reading of readings)
          expect(["pass", "fail", "unclear"]).toContain(judgeReading(model, reading, readings));
      }),
      { numRuns: 150 * testDepth },
    );
  });

  it("ends every run, without a point, a time or a temperature that is not a finite number", () => {
    const faultOf = fc.constantFrom<HiddenFault["kind"]>("low-insulation", "high-resistance", "open-core");
    holds(
      fc.property(hostile, fc.array(faultOf, { maxLength: 3 }), extremes.ohm, (wiring, kinds, ohm) => {
        const faults = kinds.flatMap((kind, index): HiddenFault[] => {
          const spec = wiring.cables[index];
          if (!spec) return [];
          const cable = cableId(spec.from, spec.to);
          if (kind === "low-insulation")
            return [{ kind, cable, between: ["L", "N"], insulationMegohm: ohm / 1e6 }];
          if (kind === "high-resistance") return [{ kind, cable, role: "L", resistanceOhm: ohm }];
          return [{ kind: "open-core", cable, role: "N" }];
        });
        const loads = (wiring.loads ?? []).map((load, index) => ({ ...load, id: `load-${index}` }));
        const programme = loads.map(({ id }, index) => ({
          atS: index * 700.1,
          load: id,
          isOn: index % 3 < 2,
        }));
        const built = asBuilt(copperOf(wiring), faults);
        const run = runLoads({ wiring, built, loads, programme, durationS: 86_400, stepS: 3600 });
        expect(notFinite(run)).toEqual([]);
        expect(run.timeS).toHaveLength(25);
        for (const { earlyC, lateC } of run.cables)
          for (const value of [...earlyC, ...lateC]) expect(value).toBeLessThanOrEqual(1084);
      }),
      { numRuns: 50 * testDepth },
    );
  });
});
