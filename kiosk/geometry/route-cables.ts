import { findRoomyWay, type OffGuide } from "./find-way.ts";
import { makeGrid, take } from "./lane-grid.ts";
import type { Point } from "./point.ts";
import type { RouteField, RouteOrder, RouteWish } from "./route-field.ts";

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
