import type { StationId } from "../board/ids.ts";
import { type PlanGraph, planGraph, type PlanPoint } from "./plan-graph.ts";
import type { Plan } from "./scenario.schema.ts";

/** A way along the walls of a plan. */
export interface PlanWay {
  lengthSteps: number;
  /** Every point that it passes, in grid steps, both ends among them. */
  points: PlanPoint[];
  /** The class of the run from each point to the next. */
  runClasses: (string | undefined)[];
}

interface Reached {
  node: number;
  heading: number | undefined;
  lengthSteps: number;
  turns: number;
  routeClass: string | undefined;
  before: Reached | undefined;
}

const sameLength = 1e-6;
const isNearer = (a: Reached, b: Reached): boolean =>
  Math.abs(a.lengthSteps - b.lengthSteps) > sameLength ? a.lengthSteps < b.lengthSteps : a.turns < b.turns;

/** Shortest way from one node to another (Dijkstra); of ways that are equally long, the one with fewest turns. */
function shortestWay(graph: PlanGraph, start: number, end: number): PlanWay | undefined {
  const open: Reached[] = [
    {
      node: start,
      heading: undefined,
      lengthSteps: 0,
      turns: 0,
      routeClass: undefined,
      before: undefined,
    },
  ];
  const done = new Set<string>();
  for (;;) {
    const next = open.reduce<Reached | undefined>((a, b) => (a && !isNearer(b, a) ? a : b), undefined);
    if (!next) return undefined;
    open.splice(open.indexOf(next), 1);
    if (next.node === end) return wayOf(graph, next);
    const state = `${next.node} ${next.heading}`;
    if (done.has(state)) continue;
    done.add(state);
    for (const edge of graph.edges[next.node] ?? []) {
      const isTurn = next.heading !== undefined && next.heading !== edge.heading;
      open.push({
        node: edge.to,
        heading: edge.heading,
        lengthSteps: next.lengthSteps + edge.lengthSteps,
        turns: next.turns + (isTurn ? 1 : 0),
        routeClass: edge.routeClass,
        before: next,
      });
    }
  }
}

function wayOf({ points }: PlanGraph, last: Reached): PlanWay {
  const way: PlanWay = { lengthSteps: last.lengthSteps, points: [], runClasses: [] };
  for (let at: Reached | undefined = last; at; at = at.before) {
    const point = points[at.node];
    if (point) way.points.unshift(point);
    if (at.before) way.runClasses.unshift(at.routeClass);
  }
  return way;
}

/** Points of a way without those that lie straight between their neighbours; where it turns back is kept. */
export const cornersOf = (points: readonly PlanPoint[]): PlanPoint[] =>
  points.filter((point, index) => {
    const before = points[index - 1];
    const after = points[index + 1];
    if (!before || !after) return true;
    const [inX, inY] = [point.x - before.x, point.y - before.y];
    const [outX, outY] = [after.x - point.x, after.y - point.y];
    return Math.abs(inX * outY - inY * outX) > sameLength || inX * outX + inY * outY < 0;
  });

/**
 * The shortest way along the walls between any two places of a plan. Undefined where a station has no place on the
 * plan or no wall leads from one to the other. Of ways that are as good as one another it may take another one back.
 */
export function planWays(
  plan: Pick<Plan, "walls" | "places">,
): (from: StationId, to: StationId) => PlanWay | undefined {
  const graph = planGraph(plan);
  return (from, to) => {
    const start = graph.nodeOf.get(from);
    const end = graph.nodeOf.get(to);
    return start === undefined || end === undefined ? undefined : shortestWay(graph, start, end);
  };
}
