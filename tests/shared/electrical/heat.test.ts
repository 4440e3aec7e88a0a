import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { acceptedZone, heatState } from "../../../shared/electrical/accepted-zone.ts";
import {
  cableHeat,
  settledTemperatureC,
  temperatureAfterC,
  timeToReachS,
} from "../../../shared/electrical/heat.ts";

const clipped25 = cableHeat({ csaMm2: 2.5, method: "C" })!;

describe("a conductor that keeps all its heat", () => {
  // BS 7671 Table 43.1: k = 115 for 70 °C PVC copper, 70 to 160 °C.
  it.each([1, 1.5, 2.5, 4, 6, 10, 16])("of %d mm² goes from 70 to 160 °C as k = 115 says", (csaMm2) => {
    const heat = { ...cableHeat({ csaMm2, method: "C" })!, thermalResistanceKMPerW: Infinity };
    const currentA = 100 * csaMm2;
    const timeS = timeToReachS(heat, "early", { currentA, ambientC: 30 }, 70, 160);
    const k = (currentA * Math.sqrt(timeS)) / csaMm2;
    expect(k).toBeGreaterThan(115 * 0.99);
    expect(k).toBeLessThan(115 * 1.01);
  });
});

describe("a cable at its rating", () => {
  it.each(["A", "C", "100", "101", "102", "103"] as const)("settles at 70 °C by method %s", (method) => {
    const heat = cableHeat({ csaMm2: 2.5, method })!;
    const tableA = { A: 20, C: 27, "100": 21, "101": 17, "102": 21, "103": 13.5 }[method];
    expect(settledTemperatureC(heat, { currentA: tableA, ambientC: 30 })).toBeCloseTo(70, 9);
  });

  // BS 7671 Table 4B1. Its 25 °C row is exempt: physics gives sqrt(45 / 40) = 1.06, the UK table prints 1.03 (older
  // editions were drawn for 25 °C air and the smaller credit was kept), and the safer figure stands in the table.
  it.each([
    { ambientC: 35, factor: 0.94 },
    { ambientC: 40, factor: 0.87 },
    { ambientC: 45, factor: 0.79 },
    { ambientC: 50, factor: 0.71 },
    { ambientC: 55, factor: 0.61 },
    { ambientC: 60, factor: 0.5 },
  ])("carries $factor of it in air of $ambientC °C", ({ ambientC, factor }) => {
    const settledC = (currentA: number): number => settledTemperatureC(clipped25, { currentA, ambientC });
    let lowA = 0;
    let highA = 27;
    for (let turn = 0; turn < 60; turn++) {
      const middleA = (lowA + highA) / 2;
      if (settledC(middleA) > 70) highA = middleA;
      else lowA = middleA;
    }
    expect(Math.abs(lowA / 27 - factor)).toBeLessThan(0.01);
  });

  it("grouped or in insulation is as warm at its lower rating", () => {
    // BS 7671 Table 4C1: two circuits 0.80; Table 52.2: 100 mm of insulation 0.78.
    const bunched = cableHeat({ csaMm2: 2.5, method: "C", groupedCircuits: 2 })!;
    expect(settledTemperatureC(bunched, { currentA: 27 * 0.8, ambientC: 30 })).toBeCloseTo(70, 9);
    const wrapped = cableHeat({ csaMm2: 2.5, method: "C", insulationMm: 100 })!;
    expect(settledTemperatureC(wrapped, { currentA: 27 * 0.78, ambientC: 30 })).toBeCloseTo(70, 9);
  });
});

describe("the two bounds of the band", () => {
  it("start and settle together, and in between the early one is never cooler while it warms", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 7200, noNaN: true }),
        (currentA, durationS) => {
          const heating = { currentA, ambientC: 30 };
          const early = temperatureAfterC(clipped25, "early", heating, 30, durationS);
          const late = temperatureAfterC(clipped25, "late", heating, 30, durationS);
          expect(early).toBeGreaterThanOrEqual(late - 1e-9);
          expect(late).toBeGreaterThan(30);
        },
      ),
    );
    const heating = { currentA: 27, ambientC: 30 };
    expect(temperatureAfterC(clipped25, "early", heating, 30, 1e6)).toBeCloseTo(70, 6);
    expect(temperatureAfterC(clipped25, "late", heating, 30, 1e6)).toBeCloseTo(70, 6);
  });

  it("do not depend on how time is cut", () => {
    const heating = { currentA: 40, ambientC: 25 };
    let stepped = 25;
    for (let step = 0; step < 90; step++)
      stepped = temperatureAfterC(clipped25, "late", heating, stepped, 10);
    expect(stepped).toBeCloseTo(temperatureAfterC(clipped25, "late", heating, 25, 900), 8);
  });

  it("reach a temperature after the time they say", () => {
    const heating = { currentA: 50, ambientC: 30 };
    for (const bound of ["early", "late"] as const) {
      const timeS = timeToReachS(clipped25, bound, heating, 30, 70);
      expect(temperatureAfterC(clipped25, bound, heating, 30, timeS)).toBeCloseTo(70, 8);
    }
    expect(timeToReachS(clipped25, "early", { currentA: 20, ambientC: 30 }, 30, 70)).toBe(Infinity);
  });

  it("never settle where heat comes faster than it can leave", () => {
    expect(settledTemperatureC(clipped25, { currentA: 200, ambientC: 30 })).toBe(Infinity);
    expect(settledTemperatureC(clipped25, { currentA: 0, ambientC: 30 })).toBe(30);
  });
});

describe("the accepted zone", () => {
  // BS 7671 433.1.1 and BS EN 60898-1 test b: up to 1.45 In for up to an hour.
  const zone = acceptedZone(cableHeat({ csaMm2: 2.5, method: "A" })!, 20, 30);

  it("runs from 70 °C to what an hour at 1.45 In makes of a full load, below the limit under fault", () => {
    expect(zone).toMatchObject({ fromC: 70, forS: 3600, toCurrentA: 29 });
    expect(zone.toC).toBeGreaterThan(100);
    expect(zone.toC).toBeLessThan(160);
  });

  it("holds a cable at its rating within, one at 1.45 In accepted for the hour, and not beyond", () => {
    expect(heatState(70, 20, 0, zone)).toBe("within");
    expect(heatState(zone.toC, 29, 3600, zone)).toBe("accepted");
    expect(heatState(zone.toC, 29, 3601, zone)).toBe("beyond");
    expect(heatState(80, 30, 60, zone)).toBe("beyond");
    expect(heatState(161, 29, 60, zone)).toBe("fault");
  });
});
