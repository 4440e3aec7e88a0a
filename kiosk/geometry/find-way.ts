import FlatQueue from "flatqueue";
import { tidyLine } from "./cable-shape.ts";
import { type Dock, docksOf } from "./docks.ts";
import { type GuideCosts, guideCosts } from "./guide-costs.ts";
import { axisBit, type Grid, nextNode, xOf, yOf } from "./lane-grid.ts";
import type { Point } from "./point.ts";
import type { RouteField, RouteWish } from "./route-field.ts";

// What a way costs, in steps of one lane. A lane that another cable lies in, or a plate in the way, costs so much
// that it is taken only where there is no other way at all. A jog is two turns one lane apart, or one right at a plate.
const cost = { turn: 1.4, jog: 30, crossing: 2.5, shared: 1000, throughPlate: 3000 };

/** What the guides of a field cost, as far as that was worked out. */
export type OffGuide = Map<readonly Point[], GuideCosts>;

/** The cost of standing at a crossing having come one way and leaving another. */
const passCost = (grid: Grid, node: number, come: number, leave: number): number => {
  const taken = grid.taken[node] ?? 0;
  const needed = axisBit(come) | axisBit(leave);
  if ((taken & needed) !== 0) return cost.shared;
  if (taken === 0) return 0;
  return come === leave ? cost.crossing : cost.shared;
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
  const costs = offGuide.get(wish.guide) ?? guideCosts(grid, wish.guide);
  offGuide.set(wish.guide, costs);
  const { legCount, off, over } = costs;
  // A state is a leg of the guide, a crossing, the way one came and whether one turned a lane before; the latter three
  // are numbered together.
  const nodeCount = grid.taken.length;
  const best = new Float64Array(legCount * nodeCount * 8).fill(Infinity);
  const came = new Int32Array(legCount * nodeCount * 8).fill(-1);
  const frontier = new FlatQueue();
  const startOf = new Map<number, Dock>();
  for (const dock of starts) {
    const state = dock.node * 8 + dock.out * 2 + (dock.isNear ? 1 : 0);
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
  for (;;) {
    const price = frontier.peekValue() ?? Infinity;
    const state = frontier.pop();
    if (state === undefined || price >= (ending?.price ?? Infinity)) break;
    // A cheaper way to the same was found after this one.
    if (price > (best[state] ?? 0)) continue;
    const place = state >> 3;
    const node = place % nodeCount;
    const come = (state >> 1) & 3;
    const turnCost = (state & 1) === 0 ? cost.turn : cost.turn + cost.jog;
    const isStart = came[state] === -1;
    const isLastLeg = place >= (legCount - 1) * nodeCount;
    if (!isLastLeg) {
      const nextState = state + nodeCount * 8;
      const total = price + (over[place] ?? 0);
      if (total < (best[nextState] ?? Infinity)) {
        best[nextState] = total;
        came[nextState] = state;
        frontier.push(nextState, total);
      }
    }
    if (isLastLeg && !(isSame && isStart))
      for (const dock of goals.get(node) ?? []) {
        const into = (dock.out + 2) % 4;
        if (into === (come + 2) % 4) continue;
        const turned = into === come ? 0 : turnCost + (dock.isNear ? cost.jog : 0);
        const total = price + turned + passCost(grid, node, come, into);
        if (!ending || total < ending.price) ending = { price: total, state, dock };
      }
    for (let leave = 0; leave < 4; leave += 1) {
      if (leave === (come + 2) % 4) continue;
      const next = nextNode(grid, node, leave);
      if (next < 0) continue;
      const total =
        price +
        1 +
        (leave === come ? 0 : turnCost) +
        passCost(grid, node, come, leave) +
        (off[place - node + next] ?? 0) +
        ((grid.under[next] ?? 0) === 0 ? 0 : cost.throughPlate);
      const nextState = (place - node + next) * 8 + leave * 2 + (leave === come ? 0 : 1);
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
    const node = (state >> 3) % nodeCount;
    line.push({ x: xOf(grid, node), y: yOf(grid, node) });
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
export const findRoomyWay = (
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
