import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakerBand, type DeviceBand, fuseBand } from "../../../shared/electrical/device-band.ts";

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
      const opening = fuseBand(ratingA)!.opening(currentA);
      expect(opening.earliestS).toBeCloseTo(earliestS, 9);
      expect(opening.latestS).toBeCloseTo(latestS, 9);
    },
  );

  it.each([
    { currentA: 20, latestS: 0.1 },
    { currentA: 30, latestS: 0.03 },
  ])("of 3 A at $currentA A has opened by $latestS s", ({ currentA, latestS }) => {
    expect(fuseBand(3)!.opening(currentA).latestS).toBeCloseTo(latestS, 9);
  });

  it("of 13 A holds 20 A for ever and has opened 24.7 A within 30 minutes", () => {
    expect(fuseBand(13)!.opening(20).earliestS).toBe(Infinity);
    expect(fuseBand(13)!.opening(13 * 1.9).latestS).toBeCloseTo(1800, 6);
    expect(fuseBand(13)!.opening(24).latestS).toBe(Infinity);
  });

  it.each([5, 10])("of %d A has no gate in the standard", (ratingA) => {
    expect(fuseBand(ratingA)).toBeUndefined();
  });
});

describe("every band", () => {
  const bands: [string, DeviceBand][] = [
    ["B 6", breakerBand("B", 6)!],
    ["C 32", breakerBand("C", 32)!],
    ["D 45", breakerBand("D", 45)!],
    ["fuse 3", fuseBand(3)!],
    ["fuse 13", fuseBand(13)!],
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
