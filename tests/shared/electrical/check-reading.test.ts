import { describe, expect, it } from "vitest";
import type { ContactId, StationId } from "../../../shared/board/ids.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import { checkReading } from "../../../shared/electrical/check-reading.ts";
import { expectedReading } from "../../../shared/electrical/expected-reading.ts";
import { testedThing, testPlan, type TestSlot } from "../../../shared/electrical/test-plan.ts";
import type { Reading, Taken, TestKind, Wiring } from "../../../shared/wiring/wiring.schema.ts";
import { terse } from "./terse-wiring.ts";

const way = "way-1" as StationId;
const at = (contact: string): ContactId => contact as ContactId;
const slot = (test: TestKind, of: string): TestSlot => ({ test, of: of as StationId });

const ringWith = (more: string[] = []): Wiring =>
  terse({
    settings: { "way-1": { deviceStandard: "BS EN 60898", deviceCurve: "B", deviceRatingA: 32, rcdMa: 30 } },
    cables: [
      "way-1.a socket-1.a 2.5 27",
      "socket-1.b way-1.b 2.5 27",
      "socket-1.c socket-2.a 2.5 5",
      ...more,
    ],
  });
const radial = terse({ cables: ["way-1.a socket-1.a 2.5 22"] });

interface Said {
  reading: Partial<Reading> & Pick<Reading, "test">;
  at: string;
  taken?: Partial<Taken>;
}
function said({ reading, at: places, taken }: Said): Reading {
  const [red, black] = places.split(" ");
  return {
    way,
    red: at(red!),
    black: at(black!),
    ...reading,
    ...(taken ? { taken: { ringEnds: "joined", nulledOhm: 0.08, ...taken } } : {}),
  };
}
const check = (wiring: Wiring, what: Said, before: Said[] = []): string => {
  const readings = [...before, what].map(said);
  return checkReading(buildModel({ ...wiring, readings }), readings.at(-1)!, readings);
};

describe("a reading of R1 + R2", () => {
  // Published worked example: R1 + R2 of 22 m of 2.5/1.5 mm² is 0.43 ohm.
  const face = "socket-1.front.L socket-1.front.E";
  const linked = { linkedAtWay: "L-E" } as const;
  const r = (resistanceOhm: number, judged: "pass" | "fail", more: Partial<Reading> = {}) =>
    ({ test: "continuity-cpc", resistanceOhm, judged, ...more }) as const;

  it("is right where it was taken right, written down as shown and judged by its limit", () => {
    const shown = { resistanceOhm: 0.43 };
    expect(check(radial, { reading: r(0.43, "pass", { shown }), at: face, taken: linked })).toBe("right");
  });

  it("is misread where something else was written down, whatever it was called", () => {
    const reading = r(0.34, "pass", { shown: { resistanceOhm: 0.43 } });
    expect(check(radial, { reading, at: face, taken: linked })).toBe("misread");
    const over = r(0.43, "fail", { shown: { isOverRange: true } });
    expect(check(radial, { reading: over, at: face, taken: linked })).toBe("misread");
  });

  it("is told apart from one taken at the wrong points, or without the link at the way", () => {
    const shown = { resistanceOhm: 0.43 };
    const wrong = {
      reading: r(0.34, "pass", { shown }),
      at: "socket-1.front.L socket-1.front.N",
      taken: linked,
    };
    expect(check(radial, wrong)).toBe("wrong-points");
    expect(check(radial, { reading: r(0.43, "pass"), at: face, taken: {} })).toBe("wrong-setting");
  });

  it("of the protective conductor alone wants the long lead", () => {
    const places = "way-1.a.E socket-1.front.E";
    expect(check(radial, { reading: r(0.27, "pass"), at: places, taken: { hasLongLead: true } })).toBe(
      "right",
    );
    expect(check(radial, { reading: r(0.27, "pass"), at: places, taken: {} })).toBe("wrong-setting");
  });

  it("is called a pass or a fail by what it reads", () => {
    expect(check(radial, { reading: r(1.4, "pass"), at: face, taken: linked })).toBe("passed");
    expect(check(radial, { reading: r(0.43, "fail"), at: face, taken: linked })).toBe("failed");
    expect(check(radial, { reading: r(0.02, "pass"), at: face, taken: linked })).toBe("implausible");
    expect(
      check(radial, { reading: { test: "continuity-cpc", resistanceOhm: 0.4 }, at: face, taken: linked }),
    ).toBe("unclear");
  });
});

describe("a reading of a step of the ring test", () => {
  const ends: Said[] = ["L", "N"].map((role) => ({
    reading: { test: "ring-step-1", resistanceOhm: 0.4, judged: "pass" },
    at: `way-1.a.${role} way-1.b.${role}`,
    taken: { ringEnds: "released" },
  }));
  it.each([
    {
      step: "ring-step-1",
      places: "way-1.a.E way-1.b.E",
      ohm: 0.65,
      taken: { ringEnds: "released" },
      says: "right",
    },
    {
      step: "ring-step-1",
      places: "way-1.a.E way-1.b.E",
      ohm: 0.16,
      taken: { ringEnds: "joined" },
      says: "wrong-setting",
    },
    {
      step: "ring-step-1",
      places: "way-1.a.L way-1.b.N",
      ohm: 0.4,
      taken: { ringEnds: "released" },
      says: "wrong-points",
    },
    {
      step: "ring-step-2",
      places: "socket-1.front.L socket-1.front.N",
      ohm: 0.2,
      taken: { ringEnds: "crossed", crossedWith: "N" },
      says: "right",
    },
    {
      step: "ring-step-2",
      places: "socket-1.front.L socket-1.front.N",
      ohm: 0.2,
      taken: { ringEnds: "crossed", crossedWith: "E" },
      says: "wrong-setting",
    },
    {
      step: "ring-step-2",
      places: "socket-1.front.L socket-1.front.N",
      ohm: 0.2,
      taken: { ringEnds: "crossed-wrongly", crossedWith: "N" },
      says: "wrong-setting",
    },
    {
      step: "ring-step-2",
      places: "socket-1.front.L socket-1.front.E",
      ohm: 0.2,
      taken: { ringEnds: "crossed", crossedWith: "N" },
      says: "wrong-points",
    },
  ] as const)("$step at $places, ends $taken.ringEnds, is $says", ({ step, places, ohm, taken, says }) => {
    const reading = { test: step, resistanceOhm: ohm, judged: "pass" } as const;
    expect(check(ringWith(), { reading, at: places, taken }, ends)).toBe(says);
  });
});

describe("a reading of step 3 on a spur", () => {
  const ends: Said[] = [
    ["L", 0.4],
    ["N", 0.4],
    ["E", 0.65],
  ].map(([role, ohm]) => ({
    reading: { test: "ring-step-1", resistanceOhm: ohm as number, judged: "pass" },
    at: `way-1.a.${role} way-1.b.${role}`,
    taken: { ringEnds: "released" },
  }));
  // A quarter of 0.40 and 0.65 ohm, and 5 m of 2.5/1.5 mm² at 19.51 milliohm per metre on top: 0.36 ohm.
  it.each([
    { ohm: 0.36, judged: "pass", says: "right" },
    { ohm: 0.36, judged: "fail", says: "failed" },
    { ohm: 0.9, judged: "pass", says: "passed" },
    { ohm: 0.9, judged: "fail", says: "right" },
  ] as const)("of $ohm ohm called a $judged is $says", ({ ohm, judged, says }) => {
    const reading = { test: "ring-step-3", resistanceOhm: ohm, judged } as const;
    const taken = { ringEnds: "crossed", crossedWith: "E" } as const;
    const places = "socket-2.front.L socket-2.front.E";
    expect(check(ringWith(), { reading, at: places, taken }, ends)).toBe(says);
  });
});

describe("a reading of insulation", () => {
  const reading = { test: "insulation", isOverRange: true, judged: "pass" } as const;
  const places = "way-1.a.L way-1.a.N";
  it.each([
    { taken: { testV: 500 }, says: "right" },
    { taken: { testV: 250 }, says: "wrong-setting" },
    { taken: { testV: 250, partsIn: [{ station: "socket-1", part: "electronics" }] }, says: "right" },
    { taken: { testV: 500, partsIn: [{ station: "socket-1", part: "electronics" }] }, says: "wrong-setting" },
    { taken: { testV: 500, linkedAtWay: "L-E" }, says: "wrong-setting" },
    { taken: { testV: 500, ringEnds: "released" }, says: "wrong-setting" },
  ] as const)("taken with $taken is $says", ({ taken, says }) => {
    expect(check(radial, { reading, at: places, taken: taken as never })).toBe(says);
  });

  it("between two places of one conductor says nothing", () => {
    expect(check(radial, { reading, at: "way-1.a.L socket-1.a.L", taken: { testV: 500 } })).toBe(
      "wrong-points",
    );
  });
});

describe("the record of a circuit", () => {
  const zonesOf = (wiring: Wiring) => buildModel(wiring).circuits.find((circuit) => circuit.way === way)!;
  const words = (slots: TestSlot[]): string[] => slots.map(({ test, of }) => `${test} ${of}`);

  it("asks a ring for its three steps at every point, insulation and polarity", () => {
    expect(words(testPlan("ring", zonesOf(ringWith())))).toEqual([
      ...["L", "N", "E"].map((of) => `ring-step-1 ${of}`),
      ...["socket-1", "socket-2"].map((of) => `ring-step-2 ${of}`),
      ...["socket-1", "socket-2"].map((of) => `ring-step-3 ${of}`),
      ...["L-N", "L-E", "N-E"].map((of) => `insulation ${of}`),
      ...["socket-1", "socket-2"].map((of) => `polarity ${of}`),
    ]);
  });

  it("asks for continuity at what lies behind a fuse, and at every point of anything but a ring", () => {
    const fused = ringWith(["socket-1.d fcu-1.a 2.5 3", "fcu-1.c light-1.a 1.5 3"]);
    expect(words(testPlan("ring", zonesOf(fused)))).toContain("continuity-cpc light-1");
    expect(words(testPlan("ring", zonesOf(fused)))).toContain("ring-step-2 fcu-1");
    expect(words(testPlan("radial", zonesOf(radial)))).toEqual([
      "continuity-cpc socket-1",
      ...["L-N", "L-E", "N-E"].map((of) => `insulation ${of}`),
      "polarity socket-1",
    ]);
  });

  it("files a reading by where its probes were", () => {
    const thing = (test: TestKind, places: string) => testedThing(said({ reading: { test }, at: places }));
    expect(thing("ring-step-1", "way-1.a.N way-1.b.N")).toBe("N");
    expect(thing("ring-step-1", "way-1.a.L way-1.b.N")).toBeUndefined();
    expect(thing("ring-step-2", "socket-2.front.L socket-2.front.N")).toBe("socket-2");
    expect(thing("continuity-cpc", "way-1.a.E socket-1.front.E")).toBe("socket-1");
    expect(thing("continuity-cpc", "way-1.a.E way-1.b.E")).toBeUndefined();
    expect(thing("insulation", "way-1.a.E socket-1.a.L")).toBe("L-E");
  });
});

describe("the value a reading should come to", () => {
  const expected = (wiring: Wiring, test: TestKind, of: string) =>
    expectedReading(buildModel(wiring), way, slot(test, of));

  it("is length times resistance per metre, end to end", () => {
    // BS EN 60228 at 20 °C: 7.41 and 12.1 milliohm per metre; 54 m of ring.
    expect(expected(ringWith(), "ring-step-1", "L")).toMatchObject({
      by: "sum",
      expectedOhm: expect.closeTo(0.4, 2) as number,
      ring: [{ of: "L", csaMm2: 2.5, lengthM: 54, resistanceMilliohmPerM: 7.41 }],
    });
    expect(expected(ringWith(), "ring-step-1", "E")).toMatchObject({
      expectedOhm: expect.closeTo(0.65, 2) as number,
      ring: [{ csaMm2: 1.5, lengthM: 54, resistanceMilliohmPerM: 12.1 }],
    });
  });

  it("is a quarter of both round the ring, and the spur on top", () => {
    // Published worked example: R1 + R2 of a ring of 54 m is 0.26 ohm.
    expect(expected(ringWith(), "ring-step-3", "socket-1")).toMatchObject({
      by: "quarter",
      expectedOhm: expect.closeTo(0.26, 2) as number,
      spur: [],
    });
    const spur = expected(ringWith(), "ring-step-3", "socket-2");
    expect(spur).toMatchObject({ expectedOhm: expect.closeTo(0.263 + 0.0976, 3) as number });
    expect(spur).toMatchObject({
      spur: [
        { of: "L", lengthM: 5 },
        { of: "E", lengthM: 5 },
      ],
    });
  });

  it("is R1 + R2 to a point of a radial, the published 0.43 ohm for 22 m", () => {
    expect(expected(radial, "continuity-cpc", "socket-1")).toMatchObject({
      by: "sum",
      expectedOhm: expect.closeTo(0.43, 2) as number,
      spur: [
        { of: "L", csaMm2: 2.5, lengthM: 22 },
        { of: "E", csaMm2: 1.5, lengthM: 22 },
      ],
    });
  });

  it("has no sum where several ways lead to the point", () => {
    const fused = ringWith(["socket-1.d fcu-1.a 2.5 3", "fcu-1.c light-1.a 1.5 3"]);
    expect(expected(fused, "continuity-cpc", "light-1")).toMatchObject({ by: "paths" });
  });

  it("is the limit for insulation, and nothing for polarity", () => {
    expect(expected(radial, "insulation", "L-N")).toEqual({ by: "limit", testV: 500, leastMegohm: 1 });
    expect(expected(radial, "polarity", "socket-1")).toBeUndefined();
  });

  it("cannot be told without a ring, a way to the point or the size of a cable", () => {
    expect(expected(radial, "ring-step-1", "L")).toBeUndefined();
    expect(expected(ringWith(), "ring-step-2", "socket-9")).toBeUndefined();
    const unsized = terse({ cables: ["way-1.a socket-1.a ? 27", "socket-1.b way-1.b 2.5 27"] });
    expect(expected(unsized, "ring-step-1", "L")).toBeUndefined();
    expect(
      expected(terse({ cables: ["way-1.a socket-1.a 2.5 9 L-L N-N"] }), "continuity-cpc", "socket-1"),
    ).toBeUndefined();
  });
});
