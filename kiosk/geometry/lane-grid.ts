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
  pitchX: number;
  pitchY: number;
  columns: number;
  rows: number;
  originX: number;
  originY: number;
  /** Which axis of a crossing of lanes is taken. */
  taken: Uint8Array;
  /** Number of the plate a crossing lies under, from 1; 0 for none, `outside` on or beyond the walls round the house. */
  under: Uint16Array;
}

/** In `Grid.under`: on or beyond the walls round the house. */
const outside = 0xffff;

interface Lanes {
  count: number;
  origin: number;
  pitch: number;
  /** The first and the last lane inside the house. */
  first: number;
  last: number;
}

/** Lanes along one axis, the outermost in the house right along its edges; beyond them as many as there is room for. */
const lanesAlong = (from: number, to: number, length: number, pitchPx: number): Lanes => {
  const steps = Math.max(1, Math.round((to - from) / pitchPx));
  const pitch = (to - from) / steps;
  const first = Math.max(0, Math.floor((from - pitch / 2) / pitch));
  const after = Math.max(0, Math.floor((length - to - pitch / 2) / pitch));
  return {
    count: first + steps + 1 + after,
    origin: from - first * pitch,
    pitch,
    first,
    last: first + steps,
  };
};

/** The lanes of a field with its plates on them, none of them taken. */
export const makeGrid = ({ width, height, pitchPx, plates, house }: RouteField): Grid => {
  const half = pitchPx / 2;
  const inner = house ?? { x: half, y: half, width: width - pitchPx, height: height - pitchPx };
  const across = lanesAlong(inner.x, inner.x + inner.width, width, pitchPx);
  const down = lanesAlong(inner.y, inner.y + inner.height, height, pitchPx);
  const [columns, rows] = [across.count, down.count];
  const grid: Grid = {
    pitchX: across.pitch,
    pitchY: down.pitch,
    columns,
    rows,
    originX: across.origin,
    originY: down.origin,
    taken: new Uint8Array(columns * rows),
    under: new Uint16Array(columns * rows),
  };
  const { pitchX, pitchY } = grid;
  for (let node = 0; node < grid.under.length; node += 1) {
    const [column, row] = [node % columns, Math.floor(node / columns)];
    const isIn = column >= across.first && column <= across.last && row >= down.first && row <= down.last;
    if (!isIn) grid.under[node] = outside;
  }
  const margin = pitchPx * 0.36;
  for (const [i, plate] of plates.entries()) {
    const fromColumn = Math.ceil((plate.x - margin - grid.originX) / pitchX);
    const toColumn = Math.floor((plate.x + plate.width + margin - grid.originX) / pitchX);
    const fromRow = Math.ceil((plate.y - margin - grid.originY) / pitchY);
    const toRow = Math.floor((plate.y + plate.height + margin - grid.originY) / pitchY);
    for (let row = Math.max(0, fromRow); row <= Math.min(rows - 1, toRow); row += 1)
      for (let column = Math.max(0, fromColumn); column <= Math.min(columns - 1, toColumn); column += 1)
        grid.under[row * columns + column] = i + 1;
  }
  return grid;
};

/** Where a crossing lies across the field, in pixels. */
export const xOf = (grid: Grid, node: number): number => grid.originX + (node % grid.columns) * grid.pitchX;
/** Where a crossing lies down the field, in pixels. */
export const yOf = (grid: Grid, node: number): number =>
  grid.originY + Math.floor(node / grid.columns) * grid.pitchY;

/** The crossing next to one in a direction, or -1 past the edge. */
export const nextNode = (grid: Grid, node: number, direction: number): number => {
  const column = (node % grid.columns) + (stepX[direction] ?? 0);
  const row = Math.floor(node / grid.columns) + (stepY[direction] ?? 0);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return -1;
  return row * grid.columns + column;
};

/** Marks the lanes a line lies in, so that no other is drawn along them. */
export const take = (grid: Grid, line: readonly Point[]): void => {
  const column = (x: number) => Math.round((x - grid.originX) / grid.pitchX);
  const row = (y: number) => Math.round((y - grid.originY) / grid.pitchY);
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
