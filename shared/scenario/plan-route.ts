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
  /** The class that all of it is rated as, and where on the way that piece lies; where it runs through several. */
  worstPiece?: { routeClass: string; pathPoints: PlanPoint[] };
}

interface Way {
  lengthSteps: number;
  nodes: number[];
  /** The class of the run from each node to the next. */
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
  const way: Way = { lengthSteps: last.lengthSteps, nodes: [], runClasses: [] };
  for (let at: Reached | undefined = last; at; at = at.before) {
    way.nodes.unshift(at.node);
    if (at.before) way.runClasses.unshift(at.routeClass);
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
function worstRoute(
  plan: Pick<Plan, "routeClasses">,
  names: Set<string | undefined>,
): { route: Route; worstClass?: string } {
  const routes = Object.entries(plan.routeClasses)
    .filter(([name]) => names.has(name))
    .map(([name, route]) => ({ name, route }));
  const [first, ...rest] = routes;
  if (!first) return { route: {} };
  const worst = rest.reduce((a, b) => (capacityA(b.route) < capacityA(a.route) ? b : a), first);
  const { depthMm: _depthMm, inMetalFramedWall: _framed, ...rated } = worst.route;
  const depths = routes.flatMap(({ route }) => route.depthMm ?? []);
  const route = {
    ...rated,
    ...(depths.length > 0 ? { depthMm: Math.min(...depths) } : {}),
    ...(routes.some(({ route: { inMetalFramedWall } }) => inMetalFramedWall)
      ? { inMetalFramedWall: true }
      : {}),
  };
  const isWorse = rest.some((one) => capacityA(one.route) !== capacityA(first.route));
  return isWorse ? { route, worstClass: worst.name } : { route };
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

/** Where the first piece of a way in a class lies. */
function pieceOf(
  { nodes, runClasses }: Way,
  routeClass: string,
  points: readonly (PlanPoint | undefined)[],
): PlanPoint[] {
  const from = runClasses.indexOf(routeClass);
  const rest = runClasses.slice(from);
  const other = rest.findIndex((one) => one !== routeClass);
  const runCount = other === -1 ? rest.length : other;
  return cornersOf(nodes.slice(from, from + runCount + 1).flatMap((node) => points[node] ?? []));
}

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
    const { route, worstClass } = worstRoute(plan, new Set(way.runClasses));
    const piece =
      worstClass === undefined || stated.method !== undefined
        ? {}
        : {
            worstPiece: { routeClass: worstClass, pathPoints: pieceOf(way, worstClass, graph.points) },
          };
    return {
      ...route,
      ...piece,
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
