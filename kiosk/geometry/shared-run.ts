import type { Point } from "./point.ts";

/** So near together two parallel runs are drawn over each other, in pixels. */
const besidePx = 8;

/** How far two lines of level and upright parts lie along each other, in pixels. */
export const sharedRunPx = (one: readonly Point[], two: readonly Point[]): number => {
  // All pairs of cables are asked for with each message: nothing is made meanwhile.
  let sum = 0;
  for (let i = 1; i < one.length; i += 1) {
    const [a, b] = [one[i - 1]!, one[i]!];
    const isLevel = a.y === b.y;
    for (let j = 1; j < two.length; j += 1) {
      const [c, d] = [two[j - 1]!, two[j]!];
      if ((c.y === d.y) !== isLevel) continue;
      if (Math.abs(isLevel ? a.y - c.y : a.x - c.x) > besidePx) continue;
      const from = isLevel
        ? Math.max(Math.min(a.x, b.x), Math.min(c.x, d.x))
        : Math.max(Math.min(a.y, b.y), Math.min(c.y, d.y));
      const to = isLevel
        ? Math.min(Math.max(a.x, b.x), Math.max(c.x, d.x))
        : Math.min(Math.max(a.y, b.y), Math.max(c.y, d.y));
      sum += Math.max(0, to - from);
    }
  }
  return sum;
};
