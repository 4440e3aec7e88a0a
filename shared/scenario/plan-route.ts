import { byId, type StationId } from "../board/ids.ts";
import { cableRun } from "../trade/cable-run.ts";
import { installedCapacityA } from "../trade/capacity.ts";
import type { Route } from "../wiring/wiring.schema.ts";
import { type PlanGraph, planGraph, type PlanPoint } from "./plan-graph.ts";
import type { Plan } from "./scenario.schema.ts";

/** How a cable between two stations of a plan is run, and how long it is. */
export interface PlannedRoute extends Route {
  lengthM: number;
  /** The way on the plan, in grid steps, from the first station to the second; for drawing. */
  pathPoints: PlanPoint[];
}

interface Way {
  lengthSteps: number;
  nodes: number[];
  routeClasses: Set<string>;
}

interface Reached {
  node: number;
  heading: number | undefined;
  lengthSteps: number;
  turns: number;
  routeClass: string | undefined;
  before: Reached | undefined;
}

const stepsPerM = 10;
const sameLength = 1e-6;
const isNearer = (a: Reached, b: Reached): boolean =>
  Math.abs(a.lengthSteps - b.lengthSteps) > sameLength ? a.lengthSteps < b.lengthSteps : a.turns < b.turns;

/** Shortest way from one node to another (Dijkstra); of ways that are equally long, the one with fewest turns. */
function shortestWay(graph: PlanGraph, start: number, end: number): Way | undefined {
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
    if (next.node === end) return wayOf(next);
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

function wayOf(last: Reached): Way {
  const way: Way = { lengthSteps: last.lengthSteps, nodes: [], routeClasses: new Set() };
  for (let at: Reached | undefined = last; at; at = at.before) {
    way.nodes.unshift(at.node);
    if (at.routeClass !== undefined) way.routeClasses.add(at.routeClass);
  }
  return way;
}

/** A size to compare route classes by; which of two carries less does not hang on it. */
const comparedCsaMm2 = 2.5;
const capacityA = (route: Route): number =>
  installedCapacityA({ csaMm2: comparedCsaMm2, ...route, method: route.method ?? "C" }) ?? 0;

/**
 * One route for a way through several classes: all of it is rated as its worst piece, the one that carries
 * least; the least depth and any metal-framed wall count wherever they are, for they ask for an RCD.
 */
function worstRoute(plan: Pick<Plan, "routeClasses">, names: Set<string>): Route {
  const routes = Object.entries(plan.routeClasses)
    .filter(([name]) => names.has(name))
    .map(([, route]) => route);
  const [first, ...rest] = routes;
  if (!first) return {};
  const worst = rest.reduce((a, b) => (capacityA(b) < capacityA(a) ? b : a), first);
  const { depthMm: _depthMm, inMetalFramedWall: _framed, ...rated } = worst;
  const depths = routes.flatMap(({ depthMm }) => depthMm ?? []);
  return {
    ...rated,
    ...(depths.length > 0 ? { depthMm: Math.min(...depths) } : {}),
    ...(routes.some(({ inMetalFramedWall }) => inMetalFramedWall) ? { inMetalFramedWall: true } : {}),
  };
}

/** Points of a way without those that lie straight between their neighbours; where it turns back is kept. */
const cornersOf = (points: PlanPoint[]): PlanPoint[] =>
  points.filter((point, index) => {
    const before = points[index - 1];
    const after = points[index + 1];
    if (!before || !after) return true;
    const [inX, inY] = [point.x - before.x, point.y - before.y];
    const [outX, outY] = [after.x - point.x, after.y - point.y];
    return Math.abs(inX * outY - inY * outX) > sameLength || inX * outX + inY * outY < 0;
  });

const roundedM = (lengthM: number): number => Math.round(lengthM * 100) / 100;

/**
 * Length and way of running between any two places of a plan. Length in metres: the shortest way along the
 * walls, a drop at each of the two accessories, and a tenth (common practice, no source; see trade/cable-run).
 * An override of the pair replaces what it states. Undefined where a station has no place on the plan or no
 * wall leads from one to the other.
 */
export function routes(
  plan: Pick<Plan, "walls" | "places" | "routeClasses" | "overrides">,
): (a: StationId, b: StationId) => PlannedRoute | undefined {
  const graph = planGraph(plan);
  const known = new Map<string, PlannedRoute | undefined>();

  const forward = (a: StationId, b: StationId): PlannedRoute | undefined => {
    const start = graph.nodeOf.get(a);
    const end = graph.nodeOf.get(b);
    const way = start === undefined || end === undefined ? undefined : shortestWay(graph, start, end);
    if (!way) return undefined;
    const lengthM =
      (way.lengthSteps / stepsPerM + 2 * cableRun.accessoryDropM) * (1 + cableRun.spareFraction);
    const override = plan.overrides?.find((o) => (o.a === a && o.b === b) || (o.a === b && o.b === a));
    const { a: _a, b: _b, ...stated } = override ?? { a, b };
    return {
      ...worstRoute(plan, way.routeClasses),
      ...stated,
      lengthM: stated.lengthM ?? roundedM(lengthM),
      pathPoints: cornersOf(way.nodes.flatMap((node) => graph.points[node] ?? [])),
    };
  };

  return (a, b) => {
    const [first, second] = byId(a, b) <= 0 ? [a, b] : [b, a];
    const key = `${first}~${second}`;
    if (!known.has(key)) known.set(key, forward(first, second));
    const route = known.get(key);
    return route && first !== a ? { ...route, pathPoints: route.pathPoints.toReversed() } : route;
  };
}
