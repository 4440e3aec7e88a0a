import type { Rect } from "./point.ts";

/**
 * The last resort for an area too crowded for plates near their places: as few rows as hold them, from the top
 * down and in each from the left in the order of the plan, spread over the area. Plates overlap only where the
 * area is smaller than all of them together.
 */
export const platesInRows = <Plate extends Rect & { id: string }>(
  plates: readonly Plate[],
  area: Rect,
): Plate[] => {
  const highest = Math.max(...plates.map(({ height }) => height));
  const widest = Math.max(...plates.map(({ width }) => width));
  const mostInRow = Math.max(1, Math.floor(area.width / widest));
  const rowCount = Math.ceil(plates.length / mostInRow);
  const inRow = Math.ceil(plates.length / rowCount);
  const stepY = rowCount === 1 ? 0 : (area.height - highest) / (rowCount - 1);
  const fromTop = plates.toSorted((a, b) => a.y - b.y);
  return Array.from({ length: rowCount }, (_, row) => {
    const here = fromTop.slice(row * inRow, (row + 1) * inRow).toSorted((a, b) => a.x - b.x);
    const gap = (area.width - here.reduce((sum, { width }) => sum + width, 0)) / Math.max(1, here.length - 1);
    let x = area.x;
    return here.map((plate) => {
      const set = { ...plate, x, y: area.y + row * stepY };
      x += plate.width + gap;
      return set;
    });
  }).flat();
};
