import type { Point } from "./point.ts";

/** So near together two parallel runs are drawn over each other, in pixels. */
const besidePx = 8;

interface Run {
  a: Point;
  b: Point;
}

const runsOf = (line: readonly Point[]): Run[] => line.slice(1).map((b, i) => ({ a: line[i] ?? b, b }));

const sharedBy = (one: Run, two: Run): number => {
  const isLevel = (run: Run) => run.a.y === run.b.y;
  if (isLevel(one) !== isLevel(two)) return 0;
  const [way, across] = isLevel(one) ? (["x", "y"] as const) : (["y", "x"] as const);
  if (Math.abs(one.a[across] - two.a[across]) > besidePx) return 0;
  const from = Math.max(...[one, two].map(({ a, b }) => Math.min(a[way], b[way])));
  const to = Math.min(...[one, two].map(({ a, b }) => Math.max(a[way], b[way])));
  return Math.max(0, to - from);
};

/** How far two lines of level and upright parts lie along each other, in pixels. */
export const sharedRunPx = (one: readonly Point[], two: readonly Point[]): number =>
  runsOf(one).reduce((sum, run) => runsOf(two).reduce((all, other) => all + sharedBy(run, other), sum), 0);
