import { describe, expect, it } from "vitest";
import {
  copperResistanceMilliohmPerM,
  resistanceFactor,
  usualCpcCsaMm2,
} from "../../../shared/trade/resistance.ts";

describe("resistance of a copper conductor", () => {
  // BS EN 60228 maxima at 20 °C.
  it.each([
    { csaMm2: 0.5, milliohmPerM: 36 },
    { csaMm2: 1.5, milliohmPerM: 12.1 },
    { csaMm2: 2.5, milliohmPerM: 7.41 },
    { csaMm2: 16, milliohmPerM: 1.15 },
  ])("is $milliohmPerM mΩ/m at 20 °C for $csaMm2 mm²", ({ csaMm2, milliohmPerM }) => {
    expect(copperResistanceMilliohmPerM(csaMm2)).toBe(milliohmPerM);
  });

  // On-Site Guide Table I3: 1.20 for 70 °C PVC with the cpc in the cable.
  it("is 1.20 times as much at 70 °C", () => {
    expect(resistanceFactor(70)).toBeCloseTo(1.2, 12);
    expect(copperResistanceMilliohmPerM(2.5, 70)).toBeCloseTo(8.892, 9);
  });

  it("is not known for a size that is not made", () => {
    expect(copperResistanceMilliohmPerM(3)).toBeUndefined();
  });
});

describe("protective conductor of flat twin-and-earth", () => {
  // BS 6004 construction.
  it.each([
    [1, 1],
    [1.5, 1],
    [2.5, 1.5],
    [4, 1.5],
    [6, 2.5],
    [10, 4],
    [16, 6],
  ])("is, in %s mm² cable, %s mm²", (csaMm2, cpcCsaMm2) => {
    expect(usualCpcCsaMm2(csaMm2)).toBe(cpcCsaMm2);
  });

  it("is not known for a size that is not made", () => {
    expect(usualCpcCsaMm2(3)).toBeUndefined();
  });
});
