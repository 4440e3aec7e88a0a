import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Apart, spreadAlong } from "../../../kiosk/geometry/spread-along.ts";

const wide = { least: -10_000, most: 10_000 };
const chainOf = (gaps: readonly number[]): Apart[] =>
  gaps.map((by, before) => ({ before, after: before + 1, by }));

/**
 * Least squares in a given order by pooling adjacent violators (Ayer, Brunk, Ewing, Reid and Silverman, 1955, "An
 * empirical distribution function for sampling with incomplete information"). Gaps are taken off first.
 */
const pooled = (wanted: readonly number[], gaps: readonly number[]): number[] => {
  const offsets = [0, ...gaps].map((_, i, all) => all.slice(0, i + 1).reduce((sum, gap) => sum + gap, 0));
  const pools: { mean: number; count: number }[] = [];
  for (const [i, at] of wanted.entries()) {
    pools.push({ mean: at - (offsets[i] ?? 0), count: 1 });
    for (;;) {
      const [a, b] = pools.slice(-2);
      if (!a || !b || a.mean <= b.mean) break;
      const count = a.count + b.count;
      pools.splice(-2, 2, { mean: (a.mean * a.count + b.mean * b.count) / count, count });
    }
  }
  return pools
    .flatMap(({ mean, count }) => Array<number>(count).fill(mean))
    .map((at, i) => at + (offsets[i] ?? 0));
};

describe("things spread along a line", () => {
  it("stay where they are wanted when they are far enough apart", () => {
    const spread = spreadAlong([10, 60], [wide, wide], chainOf([50]));
    expect(spread).toEqual({ centres: [10, 60] });
  });

  it("share the move between them", () => {
    expect(spreadAlong([50, 50], [wide, wide], chainOf([20]))).toEqual({ centres: [40, 60] });
  });

  it("leave the move to the other where one stands at the edge", () => {
    const edge = { least: 0, most: 100 };
    const spread = spreadAlong([0, 5], [edge, edge], chainOf([20]));
    expect("centres" in spread && spread.centres[0]).toBe(0);
    expect("centres" in spread && spread.centres[1]).toBe(20);
  });

  it("name the row that is too long for its room", () => {
    const short = { least: 0, most: 30 };
    const apart = chainOf([20, 20]);
    const spread = spreadAlong([0, 10, 20], [short, short, short], apart);
    expect(new Set("tooTight" in spread ? spread.tooTight : [])).toEqual(new Set(apart));
  });

  it("move as little as the least squares of a row do", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 5, max: 60 })), {
          minLength: 2,
          maxLength: 8,
        }),
        (things) => {
          const wanted = things.map(([at]) => at);
          const gaps = things.slice(1).map(([, gap]) => gap);
          const spread = spreadAlong(
            wanted,
            wanted.map(() => wide),
            chainOf(gaps),
          );
          const best = pooled(wanted, gaps);
          const centres = "centres" in spread ? spread.centres : [];
          const cost = (row: readonly number[]) =>
            row.reduce((sum, at, i) => sum + (at - (wanted[i] ?? 0)) ** 2, 0);
          for (const [i, gap] of gaps.entries())
            expect((centres[i + 1] ?? 0) - (centres[i] ?? 0)).toBeGreaterThanOrEqual(gap - 1e-6);
          expect(cost(centres)).toBeLessThanOrEqual(cost(best) * 1.02 + 1);
        },
      ),
      { numRuns: 200 },
    );
  });
});
