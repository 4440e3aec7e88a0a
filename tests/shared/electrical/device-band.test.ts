import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bandOfStation, breakerBand } from "../../../shared/electrical/device-band.ts";
import type { DeviceBand } from "../../../shared/electrical/opening-time.ts";
import { fuseBand } from "../../../shared/electrical/fuse-band.ts";
import { rcdOpening } from "../../../shared/electrical/rcd-opening.ts";

describe("a circuit-breaker's band", () => {
  // BS EN 60898-1 Table 7, tests a to e, at 30 °C.
  it.each([
    { curve: "B", ratingA: 32, latestS: 60, instantA: 160 },
    { curve: "C", ratingA: 20, latestS: 60, instantA: 200 },
    { curve: "D", ratingA: 16, latestS: 60, instantA: 320 },
    { curve: "B", ratingA: 40, latestS: 120, instantA: 200 },
  ] as const)(
    "of $curve $ratingA A passes the gates of its standard",
    ({ curve, ratingA, latestS, instantA }) => {
      const band = breakerBand(curve, ratingA)!;
      expect(band.opening(ratingA)).toEqual({ earliestS: Infinity, latestS: Infinity });
      expect(band.opening(1.13 * ratingA).earliestS).toBeGreaterThanOrEqual(3600);
      expect(band.opening(1.45 * ratingA).latestS).toBeCloseTo(3600, 6);
      const thermal = band.opening(2.55 * ratingA);
      expect(thermal.earliestS).toBeCloseTo(1, 9);
      expect(thermal.latestS).toBeCloseTo(latestS, 9);
      expect(band.opening(instantA).latestS).toBeLessThanOrEqual(0.1);
      expect(band.opening(instantA * 0.999).latestS).toBeGreaterThan(0.1);
    },
  );

  it.each([
    { curve: "B", multiple: 3 },
    { curve: "C", multiple: 5 },
    { curve: "D", multiple: 10 },
  ] as const)(
    "of type $curve is not below 0.1 s until $multiple In, and may be at once above",
    ({ curve, multiple }) => {
      const band = breakerBand(curve, 32)!;
      expect(band.opening(multiple * 32).earliestS).toBeGreaterThanOrEqual(0.1);
      expect(band.opening(multiple * 32 + 1).earliestS).toBe(0);
    },
  );

  it("keeps I²t constant on its late side above 2.55 In", () => {
    const band = breakerBand("C", 32)!;
    expect(band.opening(5.1 * 32).latestS).toBeCloseTo(15, 9);
  });

  it("is not known for a rating outside the standard", () => {
    expect(breakerBand("B", 160)).toBeUndefined();
  });
});

describe("a cartridge fuse's band", () => {
  // BS 1362:1973 gates.
  it.each([
    { ratingA: 13, currentA: 30, earliestS: 1, latestS: 400 },
    { ratingA: 13, currentA: 50, earliestS: 0.1, latestS: 20 },
    { ratingA: 13, currentA: 100, earliestS: 0.01, latestS: 0.2 },
    { ratingA: 3, currentA: 9, earliestS: 0.02, latestS: 80 },
  ])(
    "of $ratingA A at $currentA A lies between $earliestS and $latestS s",
    ({ ratingA, currentA, earliestS, latestS }) => {
      const opening = fuseBand("BS 1362", ratingA).opening(currentA);
      expect(opening.earliestS).toBeCloseTo(earliestS, 9);
      expect(opening.latestS).toBeCloseTo(latestS, 9);
    },
  );

  it.each([
    { currentA: 20, latestS: 0.1 },
    { currentA: 30, latestS: 0.03 },
  ])("of 3 A at $currentA A has opened by $latestS s", ({ currentA, latestS }) => {
    expect(fuseBand("BS 1362", 3).opening(currentA).latestS).toBeCloseTo(latestS, 9);
  });

  it("of 13 A holds 20 A for ever and has opened 24.7 A within 30 minutes", () => {
    expect(fuseBand("BS 1362", 13).opening(20).earliestS).toBe(Infinity);
    expect(fuseBand("BS 1362", 13).opening(13 * 1.9).latestS).toBeCloseTo(1800, 6);
    expect(fuseBand("BS 1362", 13).opening(24).latestS).toBe(Infinity);
  });

  it.each([5, 10])("of %d A lies between the 3 A and the 13 A fuse, and is an estimate", (ratingA) => {
    const band = fuseBand("BS 1362", ratingA);
    expect(band.isEstimate).toBe(true);
    expect(fuseBand("BS 1362", 13).isEstimate).toBe(false);
    for (const multiple of [1.7, 2.5, 4, 8]) {
      const { earliestS, latestS } = band.opening(multiple * ratingA);
      expect(earliestS).toBeCloseTo(fuseBand("BS 1362", 3).opening(multiple * 3).earliestS, 9);
      expect(latestS).toBeCloseTo(fuseBand("BS 1362", 13).opening(multiple * 13).latestS, 9);
    }
    expect(band.opening(1.59 * ratingA).earliestS).toBe(Infinity);
    expect(band.opening(1.91 * ratingA).latestS).toBeLessThanOrEqual(1800);
  });
});

describe("a household cartridge or a rewireable fuse", () => {
  // BS 7671:2018 Tables 41.2 and 41.4: 0.95 x 230 V over these opens it in 0.4 and 5 s.
  it.each([
    { fuse: "BS 3036", ratingA: 30, zsOhm: 1.04, latestS: 0.4 },
    { fuse: "BS 3036", ratingA: 30, zsOhm: 2.51, latestS: 5 },
    { fuse: "BS 3036", ratingA: 45, zsOhm: 1.51, latestS: 5 },
    { fuse: "BS 88-3", ratingA: 32, zsOhm: 0.91, latestS: 0.4 },
    { fuse: "BS 88-3", ratingA: 45, zsOhm: 0.99, latestS: 5 },
  ] as const)("to $fuse of $ratingA A has opened by $latestS s at $zsOhm Ω", (row) => {
    const opening = fuseBand(row.fuse, row.ratingA).opening((0.95 * 230) / row.zsOhm);
    expect(opening.latestS).toBeCloseTo(row.latestS, 9);
    expect(opening.earliestS).toBeLessThan(row.latestS);
    expect(opening.earliestS).toBeGreaterThan(0);
  });

  it("keeps I²t constant beyond the largest tabulated current, and opens there for sure", () => {
    const band = fuseBand("BS 3036", 30);
    const atA = (0.95 * 230) / 1.04;
    expect(band.opening(2 * atA).latestS).toBeCloseTo(0.1, 9);
  });

  it("holds its rating for ever, and opens at its fusing current within an hour", () => {
    for (const [fuse, multiple] of [
      ["BS 3036", 2],
      ["BS 88-3", 1.6],
    ] as const) {
      expect(fuseBand(fuse, 20).opening(20)).toEqual({ earliestS: Infinity, latestS: Infinity });
      expect(fuseBand(fuse, 20).opening(20 * multiple).latestS).toBeLessThanOrEqual(3600);
    }
  });
});

describe("what is stated at a station", () => {
  it("gives every device and fuse a band, whatever its rating", () => {
    for (const ratingA of [3, 7.5, 13, 20, 45, 60, 100]) {
      expect(bandOfStation({ fuseRatingA: ratingA }, "fuse")).toBeDefined();
      for (const deviceStandard of ["BS 3036", "BS 88-3"] as const)
        expect(bandOfStation({ deviceStandard, deviceRatingA: ratingA }, "device")).toBeDefined();
      for (const deviceCurve of ["B", "C", "D"] as const)
        expect(
          bandOfStation({ deviceStandard: "BS EN 60898", deviceCurve, deviceRatingA: ratingA }, "device"),
        ).toBeDefined();
    }
  });

  it("gives none without a rating, a standard or a circuit-breaker's curve", () => {
    expect(bandOfStation({ deviceStandard: "BS EN 60898", deviceRatingA: 32 }, "device")).toBeUndefined();
    expect(bandOfStation({ deviceStandard: "BS 3036" }, "device")).toBeUndefined();
    expect(bandOfStation({ deviceRatingA: 32 }, "device")).toBeUndefined();
    expect(bandOfStation({}, "fuse")).toBeUndefined();
  });
});

describe("an RCD", () => {
  // BS EN 61008-1: half its rating never is too little to hold for sure, its rating must open it.
  it.each([
    { rcdMa: 30, residualMa: 14, earliestS: Infinity, latestS: Infinity },
    { rcdMa: 30, residualMa: 15, earliestS: 0, latestS: Infinity },
    { rcdMa: 30, residualMa: 30, earliestS: 0, latestS: 0.3 },
    { rcdMa: 30, residualMa: 149, earliestS: 0, latestS: 0.3 },
    { rcdMa: 30, residualMa: 150, earliestS: 0, latestS: 0.04 },
    // It may be of the S type: 500 ms, 150 ms from five times its rating.
    { rcdMa: 100, residualMa: 100, earliestS: 0, latestS: 0.5 },
    { rcdMa: 100, residualMa: 500, earliestS: 0, latestS: 0.15 },
    { rcdMa: 0, residualMa: 5000, earliestS: Infinity, latestS: Infinity },
    // Beyond what every RCD breaks, 500 A, it is not relied on.
    { rcdMa: 30, residualMa: 600_000, earliestS: 0, latestS: Infinity },
  ])("of $rcdMa mA at $residualMa mA opens within $latestS s", ({ rcdMa, residualMa, ...opening }) => {
    expect(rcdOpening(rcdMa, residualMa / 1000)).toEqual(opening);
  });
});

describe("every band", () => {
  const bands: [string, DeviceBand][] = [
    ["B 6", breakerBand("B", 6)!],
    ["C 32", breakerBand("C", 32)!],
    ["D 45", breakerBand("D", 45)!],
    ["BS 1362 5 A", fuseBand("BS 1362", 5)],
    ["BS 1362 20 A", fuseBand("BS 1362", 20)],
    ["BS 3036 5 A", fuseBand("BS 3036", 5)],
    ["BS 3036 30 A", fuseBand("BS 3036", 30)],
    ["BS 3036 45 A", fuseBand("BS 3036", 45)],
    ["BS 3036 60 A", fuseBand("BS 3036", 60)],
    ["BS 88-3 16 A", fuseBand("BS 88-3", 16)],
    ["BS 88-3 32 A", fuseBand("BS 88-3", 32)],
    ["BS 88-3 45 A", fuseBand("BS 88-3", 45)],
    ["BS 88-3 80 A", fuseBand("BS 88-3", 80)],
    ["fuse 3", fuseBand("BS 1362", 3)],
    ["fuse 13", fuseBand("BS 1362", 13)],
  ];
  it.each(bands)("opens no later for more current, and never latest before earliest: %s", (_, band) => {
    const amperes = fc.double({ min: 0.1, max: 2000, noNaN: true });
    fc.assert(
      fc.property(amperes, amperes, (one, two) => {
        const [less, more] = [band.opening(Math.min(one, two)), band.opening(Math.max(one, two))];
        expect(more.earliestS).toBeLessThanOrEqual(less.earliestS);
        expect(more.latestS).toBeLessThanOrEqual(less.latestS);
        expect(less.earliestS).toBeLessThanOrEqual(less.latestS);
      }),
    );
  });
});
