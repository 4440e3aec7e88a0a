import type { Point } from "../geometry/point.ts";

/**
 * True where the cores of a line, which lie from left to right seen along it, come to lie from right to left or
 * from bottom to top on the screen: where it runs to the left or downwards at that end.
 */
export const isDrawnBackwards = (line: readonly Point[], end: "start" | "end"): boolean => {
  const [a, b] = end === "start" ? [line[0], line[1]] : [line.at(-2), line.at(-1)];
  if (!a || !b) return false;
  return Math.abs(b.x - a.x) >= Math.abs(b.y - a.y) ? b.x < a.x : b.y > a.y;
};
