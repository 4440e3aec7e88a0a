import { type Grid, nextNode, xOf, yOf } from "./lane-grid.ts";
import type { Point, Rect } from "./point.ts";
import type { PlateHalf, RouteField } from "./route-field.ts";

/** A place where a cable can leave a plate: the first crossing outside it, and the direction out. */
export interface Dock {
  node: number;
  out: number;
  edge: Point;
  /** It lies so near to the plate that a cable turning there would not be seen to leave it straight. */
  isNear: boolean;
}

/** How far a cable runs out of a plate before it turns, in lanes: the width of a usual sheath. */
const leastOut = 0.6;

/** The crossings under a plate and in two lanes round it, row by row. */
const nodesRound = (grid: Grid, plate: Rect): number[] => {
  const clamp = (lane: number, count: number) => Math.min(count - 1, Math.max(0, lane));
  const { originX, originY, pitchX, pitchY } = grid;
  const first = (px: number, pitch: number) => Math.floor(px / pitch) - 2;
  const last = (px: number, pitch: number) => Math.ceil(px / pitch) + 2;
  const nodes: number[] = [];
  const [top, bottom] = [first(plate.y - originY, pitchY), last(plate.y + plate.height - originY, pitchY)];
  const [left, right] = [first(plate.x - originX, pitchX), last(plate.x + plate.width - originX, pitchX)];
  for (let row = clamp(top, grid.rows); row <= clamp(bottom, grid.rows); row += 1)
    for (let column = clamp(left, grid.columns); column <= clamp(right, grid.columns); column += 1)
      nodes.push(row * grid.columns + column);
  return nodes;
};

/** Every place where a cable can leave a plate, or a half of it. */
export const docksOf = (grid: Grid, field: RouteField, id: string, half: PlateHalf | undefined): Dock[] => {
  const at = field.plates.findIndex((plate) => plate.id === id);
  const plate = field.plates[at];
  if (!plate) return [];
  // The short edges of a plate with two halves must take two cables.
  const inset = field.pitchPx * (plate.headPx ? 0.12 : 0.4);
  const docks: Dock[] = [];
  for (const node of nodesRound(grid, plate)) {
    if (grid.under[node] === at + 1) continue;
    const x = xOf(grid, node);
    const y = yOf(grid, node);
    for (let out = 0; out < 4; out += 1) {
      const inner = nextNode(grid, node, (out + 2) % 4);
      if (inner < 0 || grid.under[inner] !== at + 1) continue;
      const isLevel = out % 2 === 0;
      const across = isLevel ? y : x;
      const headPx = plate.headPx ?? 0;
      if (out === 3 && headPx > 0) continue;
      if (half && isLevel && out !== (half === "right" ? 0 : 2)) continue;
      if (half && !isLevel && x > plate.x + plate.width / 2 !== (half === "right")) continue;
      const low = (isLevel ? plate.y + headPx : plate.x) + inset;
      const high = isLevel ? plate.y + plate.height - inset : plate.x + plate.width - inset;
      if (across < low || across > high) continue;
      const edge = isLevel
        ? { x: out === 0 ? plate.x + plate.width : plate.x, y }
        : { x, y: out === 1 ? plate.y + plate.height : plate.y };
      const isNear = Math.abs(edge.x - x) + Math.abs(edge.y - y) < field.pitchPx * leastOut;
      docks.push({ node, out, edge, isNear });
    }
  }
  return docks;
};
