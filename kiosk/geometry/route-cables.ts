import FlatQueue from "flatqueue";
import { tidyLine } from "./cable-shape.ts";
import { distanceToSegment, type Point, type Rect } from "./point.ts";

export interface RouteField {
  width: number;
  height: number;
  /** Distance from lane to lane, in pixels. */
  pitchPx: number;
  plates: readonly RoutePlate[];
  /** A cable shorter than this has no room for its label: it goes another way round where there is one. */
  least?: { levelPx: number; uprightPx: number };
  /** Which cables are laid first where all are laid afresh. */
  first?: RouteOrder;
}

/** Orders to try in turn, where labels find no room in the lanes of the first. */
export const routeOrders = ["shortest", "longest", "given", "turned"] as const;
export type RouteOrder = (typeof routeOrders)[number];

/** The half of a plate that a cable joins: the left one is fed, the right one feeds on. */
export type PlateHalf = "left" | "right";

export interface RoutePlate extends Rect {
  id: string;
  /** So much of its top is writing, where no cable comes in. */
  headPx?: number;
}

export interface RouteWish {
  id: string;
  from: string;
  to: string;
  /** The half that it joins at a plate with two. */
  fromHalf?: PlateHalf | undefined;
  toHalf?: PlateHalf | undefined;
  /** The way along the walls that the drawing follows where it can. */
  guide: readonly Point[];
}

// What a way costs, in steps of one lane. A lane that another cable lies in, or a plate in the way, costs so much
// that it is taken only where there is no other way at all.
const cost = { turn: 1.4, crossing: 2.5, offGuide: 0.35, mostOffGuide: 5, shared: 60, throughPlate: 150 };

// Directions: right, down, left, up. Even ones lie level.
const stepX = [1, 0, -1, 0] as const;
const stepY = [0, 1, 0, -1] as const;
const level = 1;
const upright = 2;
const axisBit = (direction: number): number => (direction % 2 === 0 ? level : upright);

interface Grid {
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

/** What a way costs off its guide at each crossing, worked out once for a guide on lanes of one field. */
type OffGuide = Map<readonly Point[], Float32Array>;

const makeGrid = ({ width, height, pitchPx, plates }: RouteField): Grid => {
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

const xOf = (grid: Grid, node: number): number => grid.originX + (node % grid.columns) * grid.pitch;
const yOf = (grid: Grid, node: number): number => grid.originY + Math.floor(node / grid.columns) * grid.pitch;

/** The crossing next to one in a direction, or -1 past the edge. */
const nextNode = (grid: Grid, node: number, direction: number): number => {
  const column = (node % grid.columns) + (stepX[direction] ?? 0);
  const row = Math.floor(node / grid.columns) + (stepY[direction] ?? 0);
  if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return -1;
  return row * grid.columns + column;
};

/** A place where a cable can leave a plate: the first crossing outside it, and the direction out. */
interface Dock {
  node: number;
  out: number;
  edge: Point;
}

/** The crossings under a plate and in two lanes round it, row by row. */
const nodesRound = (grid: Grid, plate: Rect): number[] => {
  const clamp = (lane: number, count: number) => Math.min(count - 1, Math.max(0, lane));
  const first = (px: number, origin: number) => Math.floor((px - origin) / grid.pitch) - 2;
  const last = (px: number, origin: number) => Math.ceil((px - origin) / grid.pitch) + 2;
  const nodes: number[] = [];
  const [top, bottom] = [first(plate.y, grid.originY), last(plate.y + plate.height, grid.originY)];
  const [left, right] = [first(plate.x, grid.originX), last(plate.x + plate.width, grid.originX)];
  for (let row = clamp(top, grid.rows); row <= clamp(bottom, grid.rows); row += 1)
    for (let column = clamp(left, grid.columns); column <= clamp(right, grid.columns); column += 1)
      nodes.push(row * grid.columns + column);
  return nodes;
};

const docksOf = (grid: Grid, field: RouteField, id: string, half: PlateHalf | undefined): Dock[] => {
  const at = field.plates.findIndex((plate) => plate.id === id);
  const plate = field.plates[at];
  if (!plate) return [];
  // The short edges of a plate with two halves must take two cables.
  const inset = grid.pitch * (plate.headPx ? 0.12 : 0.4);
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
      docks.push({ node, out, edge });
    }
  }
  return docks;
};

/** Marks the lanes a line lies in, so that no other is drawn along them. */
const take = (grid: Grid, line: readonly Point[]): void => {
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

/** The cost of standing at a crossing having come one way and leaving another. */
const passCost = (grid: Grid, node: number, come: number, leave: number): number => {
  const taken = grid.taken[node] ?? 0;
  const needed = axisBit(come) | axisBit(leave);
  if ((taken & needed) !== 0) return cost.shared;
  if (taken === 0) return 0;
  return come === leave ? cost.crossing : cost.shared;
};

const offGuideCosts = (grid: Grid, guide: readonly Point[]): Float32Array => {
  const costs = new Float32Array(grid.taken.length);
  if (guide.length < 2) return costs;
  for (let node = 0; node < costs.length; node += 1) {
    const point = { x: xOf(grid, node), y: yOf(grid, node) };
    let far = cost.mostOffGuide;
    for (let i = 1; i < guide.length; i += 1) {
      const [a, b] = [guide[i - 1], guide[i]];
      if (a && b) far = Math.min(far, distanceToSegment(point, a, b) / grid.pitch);
    }
    costs[node] = far * cost.offGuide;
  }
  return costs;
};

interface Way {
  line: Point[];
  /** True where it had to share a lane or pass under a plate. */
  isCrowded: boolean;
}

const findWay = (
  grid: Grid,
  field: RouteField,
  wish: RouteWish,
  offGuide: OffGuide,
  notOut?: number,
): Way | undefined => {
  const starts = docksOf(grid, field, wish.from, wish.fromHalf).filter(({ out }) => out !== notOut);
  const isSame = wish.from === wish.to;
  const goals = new Map<number, Dock[]>();
  for (const dock of docksOf(grid, field, wish.to, wish.toHalf))
    goals.set(dock.node, [...(goals.get(dock.node) ?? []), dock]);
  const off = offGuide.get(wish.guide) ?? offGuideCosts(grid, wish.guide);
  offGuide.set(wish.guide, off);
  const best = new Float32Array(grid.taken.length * 4).fill(Infinity);
  const came = new Int32Array(grid.taken.length * 4).fill(-1);
  const frontier = new FlatQueue();
  const startOf = new Map<number, Dock>();
  for (const dock of starts) {
    const state = dock.node * 4 + dock.out;
    const price =
      (off[dock.node] ?? 0) +
      ((grid.taken[dock.node] ?? 0) & axisBit(dock.out) ? cost.shared : 0) +
      ((grid.under[dock.node] ?? 0) === 0 ? 0 : cost.throughPlate);
    if (price >= (best[state] ?? 0)) continue;
    best[state] = price;
    startOf.set(state, dock);
    frontier.push(state, price);
  }
  let ending: { price: number; state: number; dock: Dock } | undefined;
  for (let state = frontier.pop(); state !== undefined; state = frontier.pop()) {
    const node = state >> 2;
    const come = state & 3;
    const price = best[state] ?? Infinity;
    if (ending && price >= ending.price) break;
    const isStart = came[state] === -1;
    if (!(isSame && isStart))
      for (const dock of goals.get(node) ?? []) {
        const into = (dock.out + 2) % 4;
        if (into === (come + 2) % 4) continue;
        const total = price + (into === come ? 0 : cost.turn) + passCost(grid, node, come, into);
        if (!ending || total < ending.price) ending = { price: total, state, dock };
      }
    for (let leave = 0; leave < 4; leave += 1) {
      if (leave === (come + 2) % 4) continue;
      const next = nextNode(grid, node, leave);
      if (next < 0) continue;
      const total =
        price +
        1 +
        (leave === come ? 0 : cost.turn) +
        passCost(grid, node, come, leave) +
        (off[next] ?? 0) +
        ((grid.under[next] ?? 0) === 0 ? 0 : cost.throughPlate);
      const nextState = next * 4 + leave;
      if (total >= (best[nextState] ?? Infinity)) continue;
      best[nextState] = total;
      came[nextState] = state;
      frontier.push(nextState, total);
    }
  }
  if (!ending) return undefined;
  const line: Point[] = [ending.dock.edge];
  let state = ending.state;
  for (;;) {
    line.push({ x: xOf(grid, state >> 2), y: yOf(grid, state >> 2) });
    const before = came[state] ?? -1;
    if (before === -1) break;
    state = before;
  }
  const start = startOf.get(state);
  if (start) line.push(start.edge);
  return { line: tidyLine(line.reverse()), isCrowded: ending.price >= cost.shared };
};

/** True where a line has no straight part that a label fits on. */
const isTooShort = (line: readonly Point[], least: RouteField["least"]): boolean =>
  least !== undefined &&
  !line.some((b, i) => {
    const a = line[i - 1] ?? b;
    return Math.abs(b.x - a.x) >= least.levelPx || Math.abs(b.y - a.y) >= least.uprightPx;
  });

/** The way of a cable; one that is too short for its label leaves its plate by another edge, if that helps. */
const findRoomyWay = (
  grid: Grid,
  field: RouteField,
  wish: RouteWish,
  offGuide: OffGuide,
): Way | undefined => {
  const way = findWay(grid, field, wish, offGuide);
  const [a, b] = way?.line ?? [];
  if (!way || !a || !b || !isTooShort(way.line, field.least)) return way;
  const out = a.y === b.y ? (b.x > a.x ? 0 : 2) : b.y > a.y ? 1 : 3;
  const other = findWay(grid, field, wish, offGuide, out);
  return other && !other.isCrowded && !isTooShort(other.line, field.least) ? other : way;
};

const lengthOf = (guide: readonly Point[]): number =>
  guide.reduce((sum, b, i) => {
    const a = guide[i - 1];
    return a ? sum + Math.abs(b.x - a.x) + Math.abs(b.y - a.y) : sum;
  }, 0);

interface Drawing {
  ways: Map<string, Point[]>;
  crowded: string[];
}

/** Lays the cables one after the other round those that are kept. */
const layAll = (
  field: RouteField,
  wishes: readonly RouteWish[],
  kept: ReadonlyMap<string, Point[]>,
  offGuide: OffGuide = new Map(),
): Drawing => {
  const grid = makeGrid(field);
  const ways = new Map<string, Point[]>();
  const crowded: string[] = [];
  for (const [id, line] of kept) {
    ways.set(id, line);
    take(grid, line);
  }
  for (const wish of wishes) {
    const way = findRoomyWay(grid, field, wish, offGuide);
    if (!way) continue;
    ways.set(wish.id, way.line);
    take(grid, way.line);
    if (way.isCrowded) crowded.push(wish.id);
  }
  return { ways, crowded };
};

const inOrder = (wishes: readonly RouteWish[], first: RouteOrder = "shortest"): RouteWish[] => {
  const byLength = wishes.toSorted((a, b) => lengthOf(a.guide) - lengthOf(b.guide));
  switch (first) {
    case "shortest":
      return byLength;
    case "longest":
      return byLength.toReversed();
    case "given":
      return [...wishes];
    case "turned":
      return wishes.toReversed();
  }
};

const mostTurns = 8;

/** Lays all cables afresh; one that found no lane is laid earlier the next time, until all have one. */
const layAfresh = (field: RouteField, wishes: readonly RouteWish[]): Drawing => {
  let order = inOrder(wishes, field.first);
  const offGuide: OffGuide = new Map();
  let best = layAll(field, order, new Map(), offGuide);
  let last = best;
  for (let turn = 0; turn < mostTurns && best.crowded.length > 0; turn += 1) {
    const { crowded } = last;
    const isCrowded = ({ id }: RouteWish) => crowded.includes(id);
    order = [...order.filter(isCrowded), ...order.filter((wish) => !isCrowded(wish))];
    last = layAll(field, order, new Map(), offGuide);
    if (last.crowded.length < best.crowded.length) best = last;
  }
  return best;
};

/**
 * Ways for the cables across the plan, in pixels, from plate edge to plate edge: each in a lane of its own, round
 * the plates of other stations, along the walls where it can. Ways of cables in `kept` stay as they are as long as
 * the others find a lane beside them, so that plugging one cable moves no other; give none where the plates have
 * moved.
 */
export const routeCables = (
  field: RouteField,
  wishes: readonly RouteWish[],
  kept: ReadonlyMap<string, Point[]>,
): Map<string, Point[]> => {
  const still = new Map(wishes.flatMap(({ id }) => (kept.has(id) ? [[id, kept.get(id) ?? []]] : [])));
  if (still.size === 0) return layAfresh(field, wishes).ways;
  const beside = layAll(
    field,
    wishes.filter(({ id }) => !still.has(id)),
    still,
  );
  if (beside.crowded.length === 0) return beside.ways;
  const afresh = layAfresh(field, wishes);
  return afresh.crowded.length < beside.crowded.length ? afresh.ways : beside.ways;
};
