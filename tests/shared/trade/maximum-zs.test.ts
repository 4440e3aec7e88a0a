import { describe, expect, it } from "vitest";
import { disconnectingDevice } from "../../../shared/trade/disconnecting-device.ts";
import { disconnectionTimeS } from "../../../shared/trade/disconnection-time.ts";
import { maximumZsOhm } from "../../../shared/trade/maximum-zs.ts";

describe("highest earth fault loop impedance a device allows", () => {
  it.each([0.2, 0.4, 5])("is one and the same for a circuit-breaker within %s s", (seconds) => {
    expect(maximumZsOhm("B", 32, seconds)).toBe(1.37);
    expect(maximumZsOhm("C", 16, seconds)).toBe(1.37);
  });

  it.each([
    { curve: "B", ratingA: 63, ohm: 0.69 },
    { curve: "C", ratingA: 63, ohm: 0.35 },
    { curve: "D", ratingA: 63, ohm: 0.17 },
    { curve: "B", ratingA: 13, ohm: 3.36 },
  ] as const)(
    "is $ohm Ω by formula for a type $curve of $ratingA A, which has no row",
    ({ curve, ratingA, ohm }) => {
      expect(maximumZsOhm(curve, ratingA, 0.4)).toBe(ohm);
    },
  );

  it("is not promised faster than the instantaneous trip", () => {
    expect(maximumZsOhm("B", 32, 0.05)).toBeUndefined();
  });

  it.each([5, 10])(
    "of a %s A plug fuse is the stricter one of 13 A, as it has no row of its own",
    (ratingA) => {
      expect(maximumZsOhm("BS 1362", ratingA, 0.4)).toBe(maximumZsOhm("BS 1362", 13, 0.4));
      expect(maximumZsOhm("BS 1362", ratingA, 5)).toBe(3.64);
    },
  );

  it("of a fuse within 1 s is that for 0.4 s, the next faster row", () => {
    expect(maximumZsOhm("BS 3036", 30, 1)).toBe(1.04);
    expect(maximumZsOhm("BS 3036", 30, 5)).toBe(2.51);
  });

  it("of a fuse is not known for 0.2 s, for a rating without a row, or for no rating", () => {
    expect(maximumZsOhm("BS 3036", 30, 0.2)).toBeUndefined();
    expect(maximumZsOhm("BS 88-3", 25, 0.4)).toBeUndefined();
    expect(maximumZsOhm("BS 1362", 15, 0.4)).toBeUndefined();
    expect(maximumZsOhm("BS 1362", 0, 0.4)).toBeUndefined();
    expect(maximumZsOhm("B", 0, 0.4)).toBeUndefined();
  });

  it("is looked up by curve for a circuit-breaker or RCBO and by standard for a fuse", () => {
    expect(disconnectingDevice("BS EN 60898", "C")).toBe("C");
    expect(disconnectingDevice("BS EN 61009", "B")).toBe("B");
    expect(disconnectingDevice("BS 3036")).toBe("BS 3036");
    expect(disconnectingDevice("BS EN 60898")).toBeUndefined();
  });
});

describe("longest time to disconnect a final circuit", () => {
  // BS 7671:2018 Table 41.1 and 411.3.2.2 to 411.3.2.4; 5 s and 1 s from memory.
  it.each([
    { isTt: false, ratingA: 32, hasSocketOutlets: true, seconds: 0.4 },
    { isTt: true, ratingA: 32, hasSocketOutlets: true, seconds: 0.2 },
    { isTt: false, ratingA: 63, hasSocketOutlets: true, seconds: 0.4 },
    { isTt: false, ratingA: 32, hasSocketOutlets: false, seconds: 0.4 },
    { isTt: false, ratingA: 40, hasSocketOutlets: false, seconds: 5 },
    { isTt: true, ratingA: 40, hasSocketOutlets: false, seconds: 1 },
  ])("is $seconds s at $ratingA A, TT $isTt, socket outlets $hasSocketOutlets", (given) => {
    expect(disconnectionTimeS(given.isTt, given.ratingA, given.hasSocketOutlets)).toBe(given.seconds);
  });
});
