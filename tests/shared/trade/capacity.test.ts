import { describe, expect, it } from "vitest";
import { cableCapacity } from "../../../shared/trade/cable-capacity.ts";
import { installedCapacityA, tabulatedCapacityA } from "../../../shared/trade/capacity.ts";
import { ambientFactor, groupingFactor, insulationFactor } from "../../../shared/trade/correction-factors.ts";

describe("current a cable may carry as installed", () => {
  it.each([
    { why: "clipped to a wall", csaMm2: 2.5, method: "C", capacityA: 27 },
    {
      why: "clipped to a wall at 40 °C, 27 x 0.87",
      csaMm2: 2.5,
      method: "C",
      ambientC: 40,
      capacityA: 23.49,
    },
    { why: "three together, 27 x 0.70", csaMm2: 2.5, method: "C", groupedCircuits: 3, capacityA: 18.9 },
    {
      why: "half a metre in insulation, 27 x 0.50",
      csaMm2: 2.5,
      method: "C",
      insulationMm: 500,
      capacityA: 13.5,
    },
    { why: "100 mm in insulation, 37 x 0.78", csaMm2: 4, method: "C", insulationMm: 100, capacityA: 28.86 },
    {
      why: "all three, 20 x 0.94 x 0.80 x 0.88",
      csaMm2: 1.5,
      method: "C",
      ambientC: 35,
      groupedCircuits: 2,
      insulationMm: 50,
      capacityA: 13.2352,
    },
  ] as const)("is $capacityA A for $csaMm2 mm² $why", ({ capacityA, why: _why, ...installation }) => {
    expect(installedCapacityA(installation)).toBeCloseTo(capacityA, 9);
  });

  it.each(["A", "100", "101", "102", "103"] as const)(
    "does not count insulation a second time in method %s, which is already in insulation",
    (method) => {
      expect(installedCapacityA({ csaMm2: 2.5, method, insulationMm: 400 })).toBe(
        tabulatedCapacityA(2.5, method),
      );
    },
  );

  it.each([
    { csaMm2: 3, method: "C" },
    { csaMm2: 2.5, method: "C", ambientC: 61 },
    { csaMm2: 2.5, method: "C", groupedCircuits: 21 },
    { csaMm2: 2.5, method: "C", groupedCircuits: 0 },
    { csaMm2: 2.5, method: "C", insulationMm: -1 },
  ] as const)("is not known outside the tables: %o", (installation) => {
    expect(installedCapacityA(installation)).toBeUndefined();
  });

  it("grows with the size of the cable in every method", () => {
    for (const method of ["A", "C", "100", "101", "102", "103"] as const) {
      const capacities = cableCapacity.filter((row) => row.method === method).map((row) => row.capacityA);
      expect(capacities).toHaveLength(7);
      expect(capacities).toEqual([...capacities].sort((a, b) => a - b));
    }
  });
});

describe("rating factors between two rows of a table", () => {
  it.each([
    { factor: "Ca", of: ambientFactor, at: 32, lower: 0.94 },
    { factor: "Ca", of: ambientFactor, at: 10, lower: 1.03 },
    { factor: "Ca", of: ambientFactor, at: 60, lower: 0.5 },
    { factor: "Cg", of: groupingFactor, at: 10, lower: 0.45 },
    { factor: "Ci", of: insulationFactor, at: 60, lower: 0.78 },
    { factor: "Ci", of: insulationFactor, at: 20, lower: 0.88 },
    { factor: "Ci", of: insulationFactor, at: 3000, lower: 0.5 },
    { factor: "Ci", of: insulationFactor, at: 0, lower: 1 },
  ])("take the lower: $factor at $at is $lower", ({ of, at, lower }) => {
    expect(of(at)).toBe(lower);
  });

  it("are unknown where what they depend on is no number", () => {
    expect(ambientFactor(NaN)).toBeUndefined();
    expect(groupingFactor(NaN)).toBeUndefined();
    expect(insulationFactor(NaN)).toBeUndefined();
  });
});
