import type { StationId } from "../board/ids.ts";
import type { Plan } from "./scenario.schema.ts";

/** A position on a plan in grid steps of 0.1 m, from the top left. */
export interface PlanPoint {
  x: number;
  y: number;
}

export interface PlanEdge {
  to: number;
  lengthSteps: number;
  routeClass: string;
  /** Which way it runs, the same for both ends of a straight piece. */
  heading: number;
}

/** The walls of a plan cut at every crossing and place: points, and the pieces of wall that leave each. */
export interface PlanGraph {
  points: PlanPoint[];
  edges: PlanEdge[][];
  nodeOf: Map<StationId, number>;
}

type Wall = Plan["walls"][number];

const nearSteps = 1e-6;
/** Points this near are one node, so a node can lie this far beside the wall it is on. */
const oneNodeSteps = 1e-4;
const distance = (a: PlanPoint, b: PlanPoint): number => Math.hypot(a.x - b.x, a.y - b.y);

/** How far along a wall the point nearest to `p` lies, from 0 to 1. */
const along = (p: PlanPoint, { from, to }: Wall): number => {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  return Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / squared));
};

const pointAt = ({ from, to }: Wall, share: number): PlanPoint => ({
  x: from.x + (to.x - from.x) * share,
  y: from.y + (to.y - from.y) * share,
});

const crossing = (one: Wall, other: Wall): PlanPoint | undefined => {
  const ax = one.to.x - one.from.x;
  const ay = one.to.y - one.from.y;
  const bx = other.to.x - other.from.x;
  const by = other.to.y - other.from.y;
  const cross = ax * by - ay * bx;
  if (cross === 0) return undefined;
  const cx = other.from.x - one.from.x;
  const cy = other.from.y - one.from.y;
  const t = (cx * by - cy * bx) / cross;
  const u = (cx * ay - cy * ax) / cross;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? pointAt(one, t) : undefined;
};

/** The wall nearest to a place, the first of equals, and the point of it the place reaches. */
const nearestWall = (at: PlanPoint, walls: Wall[]): { wall: Wall; foot: PlanPoint } | undefined => {
  let best: { wall: Wall; foot: PlanPoint } | undefined;
  for (const wall of walls) {
    const foot = pointAt(wall, along(at, wall));
    if (!best || distance(at, foot) < distance(at, best.foot) - nearSteps) best = { wall, foot };
  }
  return best;
};

const headingOf = (a: PlanPoint, b: PlanPoint): number => {
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  const half = angle < -nearSteps ? angle + Math.PI : angle;
  return Math.abs(half - Math.PI) < nearSteps ? 0 : Math.round(half * 1e6);
};

/** Cuts the walls of a plan at their crossings and where places reach them. A place joins its nearest wall. */
export function planGraph(plan: Pick<Plan, "walls" | "places">): PlanGraph {
  const points: PlanPoint[] = [];
  const edges: PlanEdge[][] = [];
  const nodeOf = new Map<StationId, number>();
  const numbers = new Map<string, number>();
  const node = (point: PlanPoint): number => {
    const key = `${Math.round(point.x / oneNodeSteps)},${Math.round(point.y / oneNodeSteps)}`;
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, points.length);
    points.push(point);
    edges.push([]);
    return points.length - 1;
  };
  const connect = (a: number, b: number, routeClass: string): void => {
    const from = points[a];
    const to = points[b];
    if (a === b || !from || !to) return;
    const piece = { lengthSteps: distance(from, to), routeClass, heading: headingOf(from, to) };
    edges[a]?.push({ to: b, ...piece });
    edges[b]?.push({ to: a, ...piece });
  };

  for (const { from, to } of plan.walls) {
    node(from);
    node(to);
  }
  plan.walls.forEach((wall, index) => {
    for (const other of plan.walls.slice(index + 1)) {
      const point = crossing(wall, other);
      if (point) node(point);
    }
  });
  for (const { station, at } of plan.places) {
    const nearest = nearestWall(at, plan.walls);
    nodeOf.set(station, node(at));
    if (nearest) connect(node(at), node(nearest.foot), nearest.wall.routeClass);
  }
  for (const wall of plan.walls) {
    const onWall = points
      .map((point, number) => ({ number, share: along(point, wall), point }))
      .filter(({ point, share }) => distance(point, pointAt(wall, share)) < 2 * oneNodeSteps)
      .sort((a, b) => a.share - b.share);
    onWall.slice(1).forEach((end, index) => {
      const start = onWall[index];
      if (start) connect(start.number, end.number, wall.routeClass);
    });
  }
  return { points, edges, nodeOf };
}
