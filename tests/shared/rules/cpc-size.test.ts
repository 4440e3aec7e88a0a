import { describe, expect, it } from "vitest";
import { cpcSize } from "../../../shared/rules/cpc-size.ts";
import type { StationSettings } from "../../../shared/board/station-settings.schema.ts";
import { factsOf, said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const radial = (lengthM: number, settings: StationSettings) =>
  wire([`way-1.a socket-1.a ${lengthM}m`], { settings: { "way-1": settings } });
const cable = "socket-1.a~way-1.a";

describe("a protective conductor in a fault at its far end", () => {
  it("is too small where a breaker takes its thermal time", () => {
    // 60 m of 2.5/1.5 mm² hot: Zs 0.35 + 1.405 = 1.755 ohm, 131.1 A = 4.10 In of B32. Late side (BS EN 60898-1 Table 7,
    // constant I²t from 60 s at 2.55 In): I²t = 81.6² x 60, so S = 81.6 x sqrt(60) / 115 = 5.50 mm².
    expect(said(cpcSize, radial(60, { rcdMa: 0 }))).toEqual([`fix small ${cable}`]);
    const facts = factsOf(cpcSize, radial(60, { rcdMa: 0 }));
    expect(facts["leastCsaMm2"]).toBeCloseTo((81.6 * Math.sqrt(60)) / 115, 6);
    expect(facts["faultA"]).toBeCloseTo(230 / (0.35 + 60 * 0.023412), 6);
    expect(facts["cpcCsaMm2"]).toBe(1.5);
  });

  it("is large enough where the RCD opens long before the breaker", () => {
    // BS EN 61008-1: 40 ms from 5 IdN; 131 A x sqrt(0.04) / 115 = 0.23 mm².
    expect(said(cpcSize, radial(60, {}))).toEqual([]);
  });

  it("is not judged where the breaker opens at once and its maker has not said what it lets through", () => {
    expect(said(cpcSize, radial(5, {}))).toEqual([]);
  });

  it.each([
    // S = sqrt(I²t) / 115: 29,756 A²s is 1.5 mm² (BS 7671 543.1.3).
    { letThroughA2s: 29_700, says: [] },
    { letThroughA2s: 30_000, says: [`fix small ${cable}`] },
  ])("is held to $letThroughA2s A²s that the maker states", ({ letThroughA2s, says }) => {
    expect(said(cpcSize, radial(5, { letThroughA2s, rcdMa: 0 }))).toEqual(says);
  });

  it("is held to what the RCD lets through where that is less", () => {
    // 20 m: Zs 0.35 + 0.468 ohm, 281 A; 40 ms are 3,160 A²s: 0.49 mm². On TT with 100 ohm it is 2.3 A and nothing at all.
    expect(said(cpcSize, radial(20, { letThroughA2s: 40_000 }))).toEqual([]);
    expect(said(cpcSize, radial(20, { letThroughA2s: 40_000, rcdMa: 0 }))).toEqual([`fix small ${cable}`]);
    const tt = {
      ...radial(20, { letThroughA2s: 40_000 }),
      supply: { earthing: "TT", electrodeOhm: 100 } as const,
    };
    expect(said(cpcSize, tt)).toEqual([]);
  });

  it("behind a connection unit is protected by its fuse", () => {
    // 30 + 30 m: Zs 1.755 ohm, 131 A: BS 1362 13 A opens within 0.2 s x (100 / 131)²; S = 100 x sqrt(0.2) / 115 = 0.39.
    const wiring = wire(["way-1.a fcu-1.a 30m", "fcu-1.c socket-2.a 30m"], {
      settings: { "way-1": { rcdMa: 0 } },
    });
    expect(said(cpcSize, wiring)).toEqual([]);
  });

  it("of a rewireable fuse is held to the time of its table", () => {
    // BS 7671 Table 41.2, BS 3036 30 A: 1.04 ohm, 210 A, for 0.4 s, and no more energy beyond: 210 x sqrt(0.4) / 115 = 1.16.
    const fuse = { rcdMa: 0, deviceStandard: "BS 3036", deviceRatingA: 30 } as const;
    expect(said(cpcSize, radial(25, fuse))).toEqual([]);
    const thin = radial(10, fuse);
    const cables = thin.cables.map((each) => ({ ...each, cpcCsaMm2: 1 }));
    expect(said(cpcSize, { ...thin, cables })).toEqual([`fix small ${cable}`]);
  });

  it.each(["BS 3036", "BS 88-3"] as const)(
    "is not too small for being near a %s fuse, where more current flows for less time",
    (deviceStandard) => {
      const fuse = { deviceStandard, deviceRatingA: deviceStandard === "BS 3036" ? 30 : 32 } as const;
      for (const rcdMa of [0, 30, 100])
        for (const lengthM of [2, 5, 10, 20])
          expect(said(cpcSize, radial(lengthM, { ...fuse, rcdMa }))).toEqual([]);
    },
  );

  it("that is not known is asked for", () => {
    const wiring = radial(10, {});
    const cables = wiring.cables.map((each) => ({ ...each, csaMm2: 3 }));
    expect(said(cpcSize, { ...wiring, cables })).toEqual([`missing csaMm2 ${cable}`]);
  });
});
