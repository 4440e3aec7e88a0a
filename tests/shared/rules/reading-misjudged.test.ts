import { describe, expect, it } from "vitest";
import { contactIdPattern, stationId, type ContactId } from "../../../shared/board/ids.ts";
import { readingMisjudged } from "../../../shared/rules/reading-misjudged.ts";
import type { Reading, TestKind } from "../../../shared/wiring/wiring.schema.ts";
import { said } from "./check-electrical.ts";
import { wire } from "./wire.ts";

const contact = (id: string): ContactId => {
  if (!contactIdPattern.test(id)) throw new Error(`no contact: ${id}`);
  return id as ContactId;
};

function reading(test: TestKind, at: string, shown: number | "over", judged: "pass" | "fail"): Reading {
  const [red, black] = at.split(" ");
  return {
    test,
    way: stationId("way-1"),
    ...(red ? { red: contact(red) } : {}),
    ...(black ? { black: contact(black) } : {}),
    ...(shown === "over"
      ? { isOverRange: true }
      : test === "insulation"
        ? { insulationMegohm: shown }
        : { resistanceOhm: shown }),
    judged,
  };
}
const radial = (...readings: Reading[]) => wire(["way-1.a socket-1.a 20m"], { readings });
/** 54 m of ring in 2.5/1.5 mm²: r1 0.40, r2 0.65 ohm; a spur of 5 m at the first outlet. */
const ring = (...readings: Reading[]) =>
  wire(["way-1.a socket-1.a 27m", "socket-1.b way-1.b 27m", "socket-1.c socket-2.a 5m"], { readings });
const end = (role: string): string => `way-1.a.${role} way-1.b.${role}`;
const face = (station: string, other: string): string => `${station}.front.L ${station}.front.${other}`;
const passed = (place: string): string[] => [`fix passed ${place}`];
const failed = (place: string): string[] => [`fix failed ${place}`];

describe("a reading of insulation", () => {
  // BS 7671 Table 64: at least 1.00 megohm at 500 V.
  const at = "way-1.front.L way-1.front.E";
  it.each([
    { shown: 1, judged: "pass", says: [] },
    { shown: 0.99, judged: "pass", says: passed("way-1.front.L") },
    { shown: 0.99, judged: "fail", says: [] },
    { shown: 1, judged: "fail", says: failed("way-1.front.L") },
    { shown: "over", judged: "pass", says: [] },
    { shown: "over", judged: "fail", says: failed("way-1.front.L") },
  ] as const)("of $shown megohm called a $judged says $says", ({ shown, judged, says }) => {
    expect(said(readingMisjudged, radial(reading("insulation", at, shown, judged)))).toEqual(says);
  });
});

describe("a reading of the protective conductor", () => {
  // BS EN 60228: 20 m of 2.5/1.5 mm² come to R1 + R2 0.39 ohm; leads of 0.08 ohm may be in it.
  it.each([
    { shown: 0.39, judged: "pass", says: [] },
    { shown: 0.47, judged: "pass", says: [] },
    { shown: 0.39, judged: "fail", says: failed("socket-1.front.L") },
    { shown: 1.09, judged: "pass", says: passed("socket-1.front.L") },
    { shown: "over", judged: "pass", says: passed("socket-1.front.L") },
    { shown: "over", judged: "fail", says: [] },
  ] as const)("R1 + R2 of $shown ohm called a $judged says $says", ({ shown, judged, says }) => {
    const wiring = radial(reading("continuity-cpc", face("socket-1", "E"), shown, judged));
    expect(said(readingMisjudged, wiring)).toEqual(says);
  });

  it("by the long lead is held to R2 alone", () => {
    const at = "way-1.front.E socket-1.front.E";
    expect(said(readingMisjudged, radial(reading("continuity-cpc", at, 0.24, "pass")))).toEqual([]);
    expect(said(readingMisjudged, radial(reading("continuity-cpc", at, 0.9, "pass")))).toEqual(
      passed("way-1.front.E"),
    );
  });

  it("cannot be told where the cable is not known, and is left alone where nobody has judged it", () => {
    const one = reading("continuity-cpc", face("socket-1", "E"), 5, "pass");
    expect(said(readingMisjudged, wire(["way-1.a socket-1.a ? 20m"], { readings: [one] }))).toEqual([
      "missing csaMm2 socket-1.a~way-1.a",
    ]);
    const { judged: _judged, ...unjudged } = one;
    expect(said(readingMisjudged, radial(unjudged))).toEqual([]);
  });
});

describe("a reading of ring ends", () => {
  const ends = (n: number, e: number, judged: Partial<Record<"L" | "N" | "E", "pass" | "fail">> = {}) =>
    ring(
      reading("ring-step-1", end("L"), 0.4, judged.L ?? "pass"),
      reading("ring-step-1", end("N"), n, judged.N ?? "pass"),
      reading("ring-step-1", end("E"), e, judged.E ?? "pass"),
    );

  // IET Guidance Note 3: r1 and rn within 0.05 ohm; r2 1.67 r1, by the standard's maxima 1.63.
  it("passes with rn near r1 and r2 some 1.63 times as much", () => {
    expect(said(readingMisjudged, ends(0.4, 0.65))).toEqual([]);
    expect(said(readingMisjudged, ends(0.45, 0.67))).toEqual([]);
  });

  it("fails line and neutral where they are further apart", () => {
    expect(said(readingMisjudged, ends(0.5, 0.65))).toEqual([...passed("way-1.a.L"), ...passed("way-1.a.N")]);
  });

  it("fails a protective conductor that is not of its size", () => {
    expect(said(readingMisjudged, ends(0.4, 0.98))).toEqual(passed("way-1.a.E"));
    expect(said(readingMisjudged, ends(0.4, 0.98, { E: "fail" }))).toEqual([]);
    expect(said(readingMisjudged, ends(0.4, 0.65, { E: "fail" }))).toEqual(failed("way-1.a.E"));
  });

  it("fails an open end", () => {
    expect(said(readingMisjudged, ring(reading("ring-step-1", end("L"), "over", "pass")))).toEqual(
      passed("way-1.a.L"),
    );
  });

  it("of one conductor alone says nothing", () => {
    expect(said(readingMisjudged, ring(reading("ring-step-1", end("L"), 0.4, "fail")))).toEqual([]);
  });
});

describe("a reading that cable of that length does not give", () => {
  const ends = (l: number, n: number, judged: "pass" | "fail" = "pass") =>
    said(
      readingMisjudged,
      ring(reading("ring-step-1", end("L"), l, judged), reading("ring-step-1", end("N"), n, judged)),
    );
  const probeAgain = (place: string): string[] => [`fix implausible ${place}`];

  // 54 m of 2.5 mm² are 0.40 ohm (BS EN 60228): under half, less 0.05 ohm, is not its ends, nor is over twice.
  it("is none of its ends, though both conductors are alike", () => {
    expect(ends(0.02, 0.02)).toEqual([...probeAgain("way-1.a.L"), ...probeAgain("way-1.a.N")]);
    expect(ends(1.2, 1.2)).toEqual([...probeAgain("way-1.a.L"), ...probeAgain("way-1.a.N")]);
    expect(ends(0.16, 0.16)).toEqual([]);
    expect(ends(0.9, 0.9)).toEqual([]);
  });

  it("is rightly called a fail, and says nothing against the other conductor", () => {
    expect(ends(0.02, 0.02, "fail")).toEqual([]);
    expect(ends(1.2, 1.2, "fail")).toEqual([]);
    expect(ends(0.02, 0.4)).toEqual(probeAgain("way-1.a.L"));
  });

  it("is no protective conductor either, with the line or by itself", () => {
    const one = (shown: number, judged: "pass" | "fail") =>
      said(
        readingMisjudged,
        wire(["way-1.a socket-1.a 40m"], {
          readings: [reading("continuity-cpc", face("socket-1", "E"), shown, judged)],
        }),
      );
    // 40 m of 2.5/1.5 mm²: 0.78 ohm.
    expect(one(0.3, "pass")).toEqual(probeAgain("socket-1.front.L"));
    expect(one(0.3, "fail")).toEqual([]);
    expect(one(0.35, "pass")).toEqual([]);
  });

  it("is judged by nothing where lengths are not known", () => {
    const unknown = wire(["way-1.a socket-1.a 27m ?", "socket-1.b way-1.b 27m"], {
      readings: [
        reading("ring-step-1", end("L"), 0.02, "pass"),
        reading("ring-step-1", end("N"), 0.02, "pass"),
      ],
    });
    expect(said(readingMisjudged, unknown)).toEqual([]);
  });
});

describe("a reading round a ring", () => {
  const before = [
    reading("ring-step-1", end("L"), 0.4, "pass"),
    reading("ring-step-1", end("N"), 0.4, "pass"),
    reading("ring-step-1", end("E"), 0.65, "pass"),
  ];
  const around = (test: TestKind, at: string, shown: number | "over", judged: "pass" | "fail" = "pass") =>
    said(readingMisjudged, ring(...before, reading(test, at, shown, judged)));

  it("passes in step 2 at a quarter of r1 + rn and fails far from it", () => {
    expect(around("ring-step-2", face("socket-1", "N"), 0.2)).toEqual([]);
    expect(around("ring-step-2", face("socket-1", "N"), 0.1)).toEqual(passed("socket-1.front.L"));
    expect(around("ring-step-2", face("socket-1", "N"), 0.4)).toEqual(passed("socket-1.front.L"));
    expect(around("ring-step-2", face("socket-1", "N"), 0.2, "fail")).toEqual(failed("socket-1.front.L"));
  });

  it("passes in step 3 between what ends and middle give", () => {
    // 0.4 x 0.65 / 1.05 = 0.248 at the way, 1.05 / 4 = 0.2625 in the middle.
    expect(around("ring-step-3", face("socket-1", "E"), 0.26)).toEqual([]);
    expect(around("ring-step-3", face("socket-1", "E"), 0.6)).toEqual(passed("socket-1.front.L"));
  });

  // BS EN 60228: 5 m of 2.5 mm² there and back come to 0.074 ohm on top of the 0.20 of the ring.
  it("reads more on a spur, by what its cable adds", () => {
    expect(around("ring-step-2", face("socket-2", "N"), 0.27)).toEqual([]);
    expect(around("ring-step-2", face("socket-2", "N"), 0.27, "fail")).toEqual(failed("socket-2.front.L"));
    expect(around("ring-step-2", face("socket-2", "N"), 3)).toEqual(passed("socket-2.front.L"));
    expect(around("ring-step-2", face("socket-2", "N"), 3, "fail")).toEqual([]);
    expect(around("ring-step-2", face("socket-2", "N"), "over")).toEqual(passed("socket-2.front.L"));
  });

  it("is not judged before the ends are on record", () => {
    expect(said(readingMisjudged, ring(reading("ring-step-2", face("socket-1", "N"), 5, "pass")))).toEqual(
      [],
    );
  });
});

describe("polarity", () => {
  const polarity = (isPolarityRight: boolean, judged: "pass" | "fail") =>
    radial({ test: "polarity", way: stationId("way-1"), isPolarityRight, judged });

  it("passes where it is right and fails where it is wrong", () => {
    expect(said(readingMisjudged, polarity(true, "pass"))).toEqual([]);
    expect(said(readingMisjudged, polarity(false, "fail"))).toEqual([]);
    expect(said(readingMisjudged, polarity(false, "pass"))).toEqual(passed("way-1"));
    expect(said(readingMisjudged, polarity(true, "fail"))).toEqual(failed("way-1"));
  });
});
