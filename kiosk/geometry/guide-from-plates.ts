import type { Point } from "./point.ts";

type Axis = "x" | "y";

/** The axis across a leg: a level one is moved up and down. */
const acrossOf = (a: Point, b: Point): Axis => (a.y === b.y ? "y" : "x");

/**
 * A guide whose ends are those plates that stand beside their places: where a plate stands no further aside than
 * `mostPx`, the leg that leaves it is moved with it, so that a cable that follows the guide leaves it straight.
 */
export const guideFromPlates = (
  guide: readonly Point[],
  from: Point | undefined,
  to: Point | undefined,
  mostPx: number,
): Point[] => {
  const moved = guide.map((point) => ({ ...point }));
  const asideOf = (end: Point, beside: Point, plate: Point): number =>
    plate[acrossOf(end, beside)] - end[acrossOf(end, beside)];
  const [start, second] = moved;
  const [last, beforeLast] = [moved.at(-1), moved.at(-2)];
  if (!start || !second || !last || !beforeLast) return moved;
  const asides = [
    ...(from ? [asideOf(start, second, from)] : []),
    ...(to ? [asideOf(last, beforeLast, to)] : []),
  ];
  if (moved.length === 2) {
    const across = acrossOf(start, last);
    if (asides.length < 2 || asides.some((aside) => Math.abs(aside) > mostPx)) return moved;
    const aside = asides.reduce((sum, one) => sum + one, 0) / 2;
    for (const point of moved) point[across] += aside;
    return moved;
  }
  for (const [end, beside, plate] of [
    [start, second, from],
    [last, beforeLast, to],
  ] as const) {
    if (!plate) continue;
    const across = acrossOf(end, beside);
    const aside = asideOf(end, beside, plate);
    if (Math.abs(aside) > mostPx) continue;
    end[across] += aside;
    beside[across] += aside;
  }
  return moved;
};
