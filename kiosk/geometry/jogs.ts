import type { Point } from "./point.ts";

/** Parts of a line between two bends shorter than this many widths of its cable are jogs. */
const leastWidths = 2;
/** So much of its width a cable runs straight out of a plate before it bends. */
const leastOutWidths = 0.6;
/** A hundredth of a width is not seen. */
const air = 0.98;

/** How many parts of a line of level and upright parts are too short for a cable so wide: between two bends, or at a plate before the first bend. */
export const jogCount = (line: readonly Point[], widthPx: number): number => {
  let count = 0;
  for (let i = 1; line.length > 2 && i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const isEnd = i === 1 || i === line.length - 1;
    const leastPx = (isEnd ? leastOutWidths : leastWidths) * widthPx * air;
    if (Math.abs(a.x - b.x) + Math.abs(a.y - b.y) < leastPx) count += 1;
  }
  return count;
};
