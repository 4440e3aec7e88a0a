import { describe, expect, it } from "vitest";
import { ambientFactors } from "../../shared/trade/ambient-factors.ts";
import { breakerCurves } from "../../shared/trade/breaker-curves.ts";
import { cableCapacity } from "../../shared/trade/cable-capacity.ts";
import { cableMakeUp } from "../../shared/trade/cable-make-up.ts";
import { cableVoltageDrop } from "../../shared/trade/cable-voltage-drop.ts";
import { tabulatedCapacityA } from "../../shared/trade/capacity.ts";
import { circuitBreakerZs } from "../../shared/trade/circuit-breaker-zs.ts";
import { copperHeat } from "../../shared/trade/copper-heat.ts";
import { diversity } from "../../shared/trade/diversity.ts";
import { mostFloorAreaM2 } from "../../shared/trade/floor-area.ts";
import { fuseGates } from "../../shared/trade/fuse-gates.ts";
import { fuseLimits } from "../../shared/trade/fuse-limits.ts";
import { fuseZs } from "../../shared/trade/fuse-zs.ts";
import { groupingFactors } from "../../shared/trade/grouping-factors.ts";
import { maximumZsOhm } from "../../shared/trade/maximum-zs.ts";
import type { ReferenceMethod } from "../../shared/trade/reference-method.ts";
import { copperResistanceMilliohmPerM } from "../../shared/trade/resistance.ts";
import { ringLimits } from "../../shared/trade/ring-limits.ts";
import { supply } from "../../shared/trade/supply.ts";

const methods: ReferenceMethod[] = ["A", "C", "100", "101", "102", "103"];

describe("BS 7671:2018 Table 4D5, flat twin-and-earth at 30 °C", () => {
  // Amperes in the order of the methods: A, C, 100, 101, 102, 103.
  it.each([
    { csaMm2: 1, row: [11.5, 16, 13, 10.5, 13, 8] },
    { csaMm2: 1.5, row: [14.5, 20, 16, 13, 16, 10] },
    { csaMm2: 2.5, row: [20, 27, 21, 17, 21, 13.5] },
    { csaMm2: 4, row: [26, 37, 27, 22, 27, 17.5] },
    { csaMm2: 6, row: [32, 47, 34, 27, 35, 23.5] },
    { csaMm2: 10, row: [44, 64, 45, 36, 47, 32] },
    { csaMm2: 16, row: [57, 85, 57, 46, 63, 42.5] },
  ])("gives $csaMm2 mm² $row A", ({ csaMm2, row }) => {
    expect(methods.map((method) => tabulatedCapacityA(csaMm2, method))).toEqual(row);
  });

  it("gives 13, 16 and 21 A in method 100, not 101, for the three small sizes", () => {
    expect([1, 1.5, 2.5].map((csaMm2) => tabulatedCapacityA(csaMm2, "100"))).toEqual([13, 16, 21]);
    expect([1, 1.5, 2.5].map((csaMm2) => tabulatedCapacityA(csaMm2, "101"))).toEqual([10.5, 13, 17]);
  });

  // Regulation 433.1.204: 20 A as installed.
  it("lets 2.5 mm² serve a ring in methods A, C, 100 and 102 and not in 101 and 103", () => {
    const serves = methods.filter(
      (method) => (tabulatedCapacityA(2.5, method) ?? 0) >= ringLimits.leastCapacityA,
    );
    expect(serves).toEqual(["A", "C", "100", "102"]);
  });

  it("lists every size in every method once", () => {
    expect(new Set(cableCapacity.map((row) => `${row.csaMm2} ${row.method}`)).size).toBe(42);
    expect(cableCapacity).toHaveLength(42);
  });

  // mV/A/m is the resistance there and back at 70 °C: 2 x R20 x 1.20, printed to two figures.
  it.each(cableVoltageDrop)("gives a drop for $csaMm2 mm² within 2 % of twice its hot resistance", (row) => {
    const thereAndBack = 2 * (copperResistanceMilliohmPerM(row.csaMm2, 70) ?? NaN);
    expect(Math.abs(row.dropMvPerAM / thereAndBack - 1)).toBeLessThan(0.02);
  });
});

describe("BS 7671:2018 Table 41.3, circuit-breakers", () => {
  // The printed table, types B, C and D.
  it.each([
    { ratingA: 6, row: [7.28, 3.64, 1.82] },
    { ratingA: 10, row: [4.37, 2.19, 1.09] },
    { ratingA: 16, row: [2.73, 1.37, 0.68] },
    { ratingA: 20, row: [2.19, 1.09, 0.55] },
    { ratingA: 25, row: [1.75, 0.87, 0.44] },
    { ratingA: 32, row: [1.37, 0.68, 0.34] },
    { ratingA: 40, row: [1.09, 0.55, 0.27] },
    { ratingA: 45, row: [0.97, 0.49, 0.24] },
    { ratingA: 50, row: [0.87, 0.44, 0.22] },
  ])("gives $row Ω at $ratingA A", ({ ratingA, row }) => {
    expect((["B", "C", "D"] as const).map((curve) => maximumZsOhm(curve, ratingA, 0.4))).toEqual(row);
  });

  // Regulation 411.4.4: Zs <= U0 x Cmin / Ia with U0 230 V, Cmin 0.95, Ia 5, 10 or 20 In.
  it.each(circuitBreakerZs)("holds 0.95 x 230 V / Ia for $curve $ratingA A within its last digit", (row) => {
    const multiple = breakerCurves.find(({ curve }) => curve === row.curve)?.tripsMultiple ?? NaN;
    const exactOhm = (0.95 * 230) / (multiple * row.ratingA);
    expect(Math.abs(row.maximumZsOhm - exactOhm)).toBeLessThanOrEqual(0.005 + 1e-9);
  });

  // BS 7671 Appendix 3: a cold reading is held to 0.8 of the limit. B6 5.82 Ω, B32 1.10 Ω.
  it.each([
    { ratingA: 6, measuredOhm: 5.82 },
    { ratingA: 32, measuredOhm: 1.1 },
  ])("asks for a cold reading of at most $measuredOhm Ω at B $ratingA A", ({ ratingA, measuredOhm }) => {
    expect(supply.measuredZsFactor * (maximumZsOhm("B", ratingA, 0.4) ?? NaN)).toBeCloseTo(measuredOhm, 2);
  });
});

describe("BS 7671:2018 Tables 41.2 and 41.4, fuses", () => {
  // 0.95 x 230 V over the current that opens the fuse in 0.4 s; table and current are both rounded.
  it.each(fuseZs.filter((row) => row.operatingCurrentA !== undefined))(
    "hold 0.95 x 230 V / Ia for $fuse $ratingA A within 1 %",
    (row) => {
      const exactOhm = (0.95 * 230) / (row.operatingCurrentA ?? NaN);
      expect(Math.abs(row.maximumZsOhm / exactOhm - 1)).toBeLessThan(0.01);
    },
  );

  it("allow more for 5 s than for 0.4 s", () => {
    const both = fuseZs.filter(({ disconnectionS, ratingA }) => disconnectionS === 5 && ratingA !== 45);
    expect(both).toHaveLength(10);
    for (const slow of both)
      expect(slow.maximumZsOhm).toBeGreaterThan(maximumZsOhm(slow.fuse, slow.ratingA, 0.4) ?? NaN);
  });

  it("have no row for 0.4 s at 45 A", () => {
    expect(maximumZsOhm("BS 3036", 45, 0.4)).toBeUndefined();
    expect(maximumZsOhm("BS 88-3", 45, 0.4)).toBeUndefined();
  });

  // Fuse tables of a test instrument's manual, 0.8 of the values of BS 7671:2008, which has no Cmin:
  // https://www.easymanua.ls/metrel/easiplus-mi-3000/manual?p=57
  const printed: Record<string, Record<number, [number | undefined, number]>> = {
    "BS 1362": { 3: [13.12, 18.56], 13: [1.936, 3.064] },
    "BS 88-3": {
      5: [8.36, 12.264],
      16: [1.936, 3.288],
      20: [1.632, 2.704],
      32: [0.768, 1.312],
      45: [undefined, 0.832],
    },
    "BS 3036": {
      5: [7.664, 14.16],
      15: [2.04, 4.28],
      20: [1.416, 3.064],
      30: [0.872, 2.112],
      45: [undefined, 1.272],
    },
  };
  it.each(fuseZs)(
    "are what an instrument's tables come to with Cmin, within 1 %: $fuse $ratingA A in $disconnectionS s",
    ({ fuse, ratingA, disconnectionS, maximumZsOhm: ohm }) => {
      const scaledOhm = printed[fuse]?.[ratingA]?.[disconnectionS === 5 ? 1 : 0] ?? NaN;
      expect(Math.abs(ohm / ((0.95 * scaledOhm) / 0.8) - 1)).toBeLessThan(0.01);
    },
  );
});

describe("BS 7671:2018 rating factors", () => {
  // Table 4B1, 70 °C thermoplastic.
  it("are 1.03 to 0.50 from 25 to 60 °C", () => {
    expect(ambientFactors.map((row) => [row.ambientC, row.factor])).toEqual([
      [25, 1.03],
      [30, 1],
      [35, 0.94],
      [40, 0.87],
      [45, 0.79],
      [50, 0.71],
      [55, 0.61],
      [60, 0.5],
    ]);
  });

  // Constant Rth from 70 °C in 30 °C: Ca = sqrt((70 - Ta) / 40). The 25 °C row of the UK table stays below it (1.03).
  it.each(ambientFactors.filter((row) => row.ambientC >= 30))(
    "are sqrt((70 - Ta) / 40) at $ambientC °C within 0.01",
    ({ ambientC, factor }) => {
      expect(Math.abs(factor - Math.sqrt((70 - ambientC) / 40))).toBeLessThan(0.01);
    },
  );

  // Table 4C1 item 1; 3, 4, 6, 7 and 8 circuits from memory.
  it("are 1.00 to 0.38 from 1 to 20 circuits", () => {
    expect(groupingFactors.map((row) => [row.circuits, row.factor])).toEqual([
      [1, 1],
      [2, 0.8],
      [3, 0.7],
      [4, 0.65],
      [5, 0.6],
      [6, 0.57],
      [7, 0.54],
      [8, 0.52],
      [9, 0.5],
      [12, 0.45],
      [16, 0.41],
      [20, 0.38],
    ]);
  });
});

describe("On-Site Guide", () => {
  // Table H2.1.
  it.each([
    { shape: "ring", ratingA: 32, areaM2: 100 },
    { shape: "ring", ratingA: 30, areaM2: 100 },
    { shape: "radial", ratingA: 32, areaM2: 75 },
    { shape: "radial", ratingA: 20, areaM2: 50 },
  ] as const)("lets a $ratingA A $shape serve $areaM2 m²", ({ shape, ratingA, areaM2 }) => {
    expect(mostFloorAreaM2(shape, ratingA)).toBe(areaM2);
  });

  it.each([16, 20, 40])("lets a ring on %i A serve no more than on 32 A", (ratingA) => {
    expect(mostFloorAreaM2("ring", ratingA)).toBe(100);
  });

  it("has no area for a 16 A radial", () => {
    expect(mostFloorAreaM2("radial", 16)).toBeUndefined();
  });

  // Table A2: lighting 66 %, heating 10 A + 50 %, cooker 10 A + 30 % + 5 A, showers 100/100/25 %, circuits 100/40 %.
  it("allows the household diversity of its Table A2", () => {
    expect(diversity.lightingFraction).toBe(0.66);
    expect([diversity.heatingFullToA, diversity.heatingRestFraction]).toEqual([10, 0.5]);
    expect([diversity.cookerFullToA, diversity.cookerRestFraction, diversity.cookerSocketOutletA]).toEqual([
      10, 0.3, 5,
    ]);
    expect([
      diversity.instantaneousHeaterFirstFraction,
      diversity.instantaneousHeaterSecondFraction,
      diversity.instantaneousHeaterRestFraction,
    ]).toEqual([1, 1, 0.25]);
    expect([diversity.thermostaticHeaterFraction, diversity.storageHeatingFraction]).toEqual([1, 1]);
    expect([diversity.standardCircuitFirstFraction, diversity.standardCircuitRestFraction]).toEqual([1, 0.4]);
  });

  // Table I1: R1 + R2 is the sum of the two conductors.
  it.each(cableMakeUp)("gives R1 + R2 of $csaMm2/$cpcCsaMm2 mm² as the sum of both", (row) => {
    const sum =
      (copperResistanceMilliohmPerM(row.csaMm2) ?? NaN) +
      (copperResistanceMilliohmPerM(row.cpcCsaMm2) ?? NaN);
    expect(row.r1PlusR2MilliohmPerM).toBeCloseTo(sum, 9);
  });
});

describe("BS 1362 fuses", () => {
  // 13 A: 1.9 x 13 = 24.7 A opens within 30 min, 1.6 x 13 = 20.8 A holds.
  it("of 13 A hold 20.8 A and open at 24.7 A within half an hour", () => {
    expect(fuseLimits.holdsMultiple * 13).toBeCloseTo(20.8, 9);
    expect(fuseLimits.opensMultiple * 13).toBeCloseTo(24.7, 9);
    expect(fuseLimits.conventionalS).toBe(30 * 60);
  });

  it("open sooner at a larger current", () => {
    for (const ratingA of [3, 13]) {
      const gates = fuseGates.filter((gate) => gate.ratingA === ratingA);
      expect(gates).toHaveLength(3);
      const latest = gates.map((gate) => gate.latestS);
      expect(latest).toEqual([...latest].sort((a, b) => b - a));
      for (const gate of gates) expect(gate.earliestS ?? 0).toBeLessThan(gate.latestS);
    }
  });

  it("of 3 A and 13 A are for 690 W and 2.99 kW at 230 V", () => {
    expect(fuseLimits.threeAmpLoadW).toBe(3 * supply.nominalV);
    expect(fuseLimits.thirteenAmpLoadW).toBe(13 * supply.nominalV);
  });
});

describe("adiabatic constants of copper", () => {
  // IEC 60949: K = sqrt(Qc (beta + 20) / rho20), printed 226; k = K sqrt(ln((beta + Tf) / (beta + Ti))).
  const { betaC, copperHeatJPerKCm3, rho20OhmM } = copperHeat;
  const constantK = Math.sqrt((copperHeatJPerKCm3 * 1e6 * (betaC + 20)) / rho20OhmM) / 1e6;
  const k = (fromC: number, toC: number) => constantK * Math.sqrt(Math.log((betaC + toC) / (betaC + fromC)));

  it("give 226", () => {
    expect(Math.round(constantK)).toBe(copperHeat.adiabaticConstantAsqrtSPerMm2);
  });

  // BS 7671 Tables 43.1/54.3 and 54.2.
  it("give k = 115 from 70 to 160 °C and 143 from 30 to 160 °C within 1 %", () => {
    expect(Math.abs(k(70, 160) / copperHeat.kInCableAsqrtSPerMm2 - 1)).toBeLessThan(0.01);
    expect(Math.abs(k(30, 160) / copperHeat.kSeparateAsqrtSPerMm2 - 1)).toBeLessThan(0.01);
  });
});
