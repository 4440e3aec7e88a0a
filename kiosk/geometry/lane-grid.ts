import type { Point } from "./point.ts";
import type { RouteField } from "./route-field.ts";

// Directions: right, down, left, up. Even ones lie level.
const stepX = [1, 0, -1, 0] as const;
const stepY = [0, 1, 0, -1] as const;
const level = 1;
const upright = 2;
/** The bit of an axis in `Grid.taken`, for a direction from 0, right, clockwise. */
export const axisBit = (direction: number): number => (direction % 2 === 0 ? level : upright);

/** The lanes of a field: cables lie along them from crossing to crossing. */
export interface Grid {
  pitch: number;
  columns: number;
  rows: number;
  originX: number;
  originY: number;
  /** Which axis of a crossing of lanes is taken. */
  taken: Uint8Array;
  /** Number of the plate a crossing lies under, from 1; 0 for none. */
  under: Uint16Array;
}

/** The lanes of a field with its plates on them, none of them taken. */
export const makeGrid = ({ width, height, pitchPx, plates }: RouteField): Grid => {
  const columns = Math.max(2, Math.floor(width / pitchPx));
  const rows = Math.max(2, Math.floor(height / pitchPx));
  const grid: Grid = {
    pitch: pitchPx,
    columns,
    rows,
    originX: (width - (columns - 1) * pitchPx) / 2,
    originY: (height - (rows - 1) * pitchPx) / 2,
    taken: new Uint8Array(columns * rows),
    under: new Uint16Array(columns * rows),
  };
  const margin = pitchPx * 0.36;
  for (const [i, plate] of plates.entries()) {
    const fromColumn = Math.ceil((plate.x - margin - grid.originX) / pitchPx);
    const toColumn = Math.floor((plate.x + plate.width + margin - grid.originX) / pitchPx);
    const fromRow = Math.ceil((plate.y - margin - grid.originY) / pitchPx);
    const toRow = Math.floor((plate.y + plate.height + margin - grid.originY) / pitchPx);
    for (let row = Math.max(0, fromRow); row <= Math.min(rows - 1, toRow); row += 1)
      for (let column = Math.max(0, fromColumn); column <= Math.min(columns - 1, toColumn); column += 1)
        grid.under[row * columns + column] = i + 1;
  }
  return grid;
};

/** Where a crossing lies across the field, in pixels. */
export const xOf = (grid: Grid, node: number): number => grid.originX + (node % grid.columns) * grid.pitch;
/** Where a crossing lies down the field, in pixels. */
export const yOf = (grid: Grid, node: number): number =>
  grid.originY + Math.floor(node / grid.columns) * grid.pitch;

/** The crossing next to one in a direction, or -1 past the edge. */
export const nextNode = (grid: Grid, node: number, direction: number): number => {
  const column = (node % grid.columns) + (stepX[direction] ?? 0);
  const row = Math.floor(node / grid.columns) + (stepY[direction] ?? 0);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return -1;
  return row * grid.columns + column;
};

/** Marks the lanes a line lies in, so that no other is drawn along them. */
export const take = (grid: Grid, line: readonly Point[]): void => {
  const column = (x: number) => Math.round((x - grid.originX) / grid.pitch);
  const row = (y: number) => Math.round((y - grid.originY) / grid.pitch);
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const bit = a.y === b.y ? level : upright;
    const [c0, c1] = [column(a.x), column(b.x)].sort((m, n) => m - n) as [number, number];
    const [r0, r1] = [row(a.y), row(b.y)].sort((m, n) => m - n) as [number, number];
    for (let r = Math.max(0, r0); r <= Math.min(grid.rows - 1, r1); r += 1)
      for (let c = Math.max(0, c0); c <= Math.min(grid.columns - 1, c1); c += 1) {
        const node = r * grid.columns + c;
        grid.taken[node] = (grid.taken[node] ?? 0) | bit;
      }
  }
};
