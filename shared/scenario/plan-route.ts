import { byId, type StationId } from "../board/ids.ts";
import { cableRun } from "../trade/cable-run.ts";
import { installedCapacityA } from "../trade/capacity.ts";
import type { Route } from "../wiring/wiring.schema.ts";
import type { PlanPoint } from "./plan-graph.ts";
import { cornersOf, type PlanWay, planWays } from "./plan-way.ts";
import type { Plan } from "./scenario.schema.ts";

/** How a cable between two stations of a plan is run, and how long it is. */
export interface PlannedRoute extends Route {
  lengthM: number;
  /** The way on the plan, in grid steps, from the first station to the second; for drawing. */
  pathPoints: PlanPoint[];
  /** The class that all of it is rated as, and where on the way that piece lies; where it runs through several. */
  worstPiece?: { routeClass: string; pathPoints: PlanPoint[] };
}

const stepsPerM = 10;

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

/** Where the first piece of a way in a class lies. */
function pieceOf({ points, runClasses }: PlanWay, routeClass: string): PlanPoint[] {
  const from = runClasses.indexOf(routeClass);
  const rest = runClasses.slice(from);
  const other = rest.findIndex((one) => one !== routeClass);
  const runCount = other === -1 ? rest.length : other;
  return cornersOf(points.slice(from, from + runCount + 1));
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
  const wayBetween = planWays(plan);
  const known = new Map<string, PlannedRoute | undefined>();

  const forward = (a: StationId, b: StationId): PlannedRoute | undefined => {
    const way = wayBetween(a, b);
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
            worstPiece: { routeClass: worstClass, pathPoints: pieceOf(way, worstClass) },
          };
    return {
      ...route,
      ...piece,
      ...stated,
      lengthM: stated.lengthM ?? roundedM(lengthM),
      pathPoints: cornersOf(way.points),
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
