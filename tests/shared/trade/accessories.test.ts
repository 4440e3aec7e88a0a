import { describe, expect, it } from "vitest";
import { socketOutletDemandA, usualRatingA } from "../../../shared/trade/accessory-rating.ts";
import { nextDeviceRatingA } from "../../../shared/trade/device-rating.ts";
import { fuseRatings } from "../../../shared/trade/fuse-ratings.ts";
import { isolationSteps } from "../../../shared/trade/isolation-steps.ts";
import { testSequence } from "../../../shared/trade/test-sequence.ts";

describe("accessories", () => {
  // BS 1363-2: 13 A each, a twin 20 A in total by convention of the standard; from memory.
  it("draw at worst 13 A from a single socket outlet and 20 A, not 26 A, from a twin", () => {
    expect(socketOutletDemandA(1)).toBe(13);
    expect(socketOutletDemandA(2)).toBe(20);
  });

  it("have usual ratings that carry their usual device", () => {
    expect(usualRatingA("cooker control unit")).toBe(45);
    expect(usualRatingA("isolator, shower")).toBe(50);
    expect(usualRatingA("junction box, socket circuits")).toBe(32);
  });
});

describe("devices and cartridges", () => {
  // BS EN 60898-1 preferred values; from memory.
  it.each([
    [0, 6],
    [6, 6],
    [6.01, 10],
    [27.65, 32],
    [36.96, 40],
    [63, 63],
  ])("for %s A the next standard rating is %s A", (currentA, ratingA) => {
    expect(nextDeviceRatingA(currentA)).toBe(ratingA);
  });

  it("have no standard rating above 63 A here", () => {
    expect(nextDeviceRatingA(63.1)).toBeUndefined();
  });

  it("of a connection unit are 3, 5, 10 and 13 A", () => {
    expect(fuseRatings.map((row) => row.ratingA)).toEqual([3, 5, 10, 13]);
  });
});

describe("order of work", () => {
  const rankOf = (test: string) => testSequence.find((row) => row.test === test)?.rank ?? NaN;

  // BS 7671:2018 643.1, from memory: continuity, ring, insulation, polarity.
  it("of the dead tests is continuity, the ring, insulation, polarity", () => {
    const order = ["continuity-cpc", "ring-step-1", "ring-step-2", "ring-step-3", "insulation", "polarity"];
    expect([...order].sort((a, b) => rankOf(a) - rankOf(b))).toEqual(order);
    expect(new Set(order.map(rankOf)).size).toBe(order.length);
  });

  // HSE GS38, from memory.
  it("of making dead proves the tester before and after the three tests", () => {
    const rankOf = Object.fromEntries(isolationSteps.map((row) => [row.step, row.rank]));
    const tests = [
      rankOf["test-line-neutral"],
      rankOf["test-line-earth"],
      rankOf["test-neutral-earth"],
    ] as number[];
    expect(Math.min(...tests)).toBeGreaterThan(rankOf["prove-tester"] as number);
    expect(Math.max(...tests)).toBeLessThan(rankOf["prove-tester-again"] as number);
    expect(rankOf["lock-off"]).toBeGreaterThan(rankOf["isolate"] as number);
  });
});
