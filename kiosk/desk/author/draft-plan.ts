import type { Plan, Scenario } from "../../../shared/scenario/scenario.schema.ts";
import type { StationId } from "../../../shared/board/ids.ts";
import type { Text } from "../../../shared/text/text.schema.ts";

/** What a touch on the plan does. */
export type PlanTool = "room" | "floor" | "ceiling" | "paint";

/** A point of a plan in its steps of 0.1 m. */
export interface At {
  x: number;
  y: number;
}

export interface Area extends At {
  width: number;
  height: number;
}

type Wall = Plan["walls"][number];

/** What is drawn lies on every second step: 0.2 m. */
export const gridSteps = 2;

export const onGrid = (value: number, most: number): number =>
  Math.min(most, Math.max(0, Math.round(value / gridSteps) * gridSteps));

/** The corner and size of the area between two points. */
export const areaBetween = (a: At, b: At): Area => ({
  x: Math.min(a.x, b.x),
  y: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
});

/** A straight wall that runs along an axis: where it lies across it, and from where to where along it. */
interface Run {
  isAcross: boolean;
  across: number;
  from: number;
  to: number;
}

const edgesOf = ({ x, y, width, height }: Area): Run[] => [
  { isAcross: true, across: y, from: x, to: x + width },
  { isAcross: true, across: y + height, from: x, to: x + width },
  { isAcross: false, across: x, from: y, to: y + height },
  { isAcross: false, across: x + width, from: y, to: y + height },
];

/** As a run, where the wall runs along an axis. */
function runOf({ from, to }: Pick<Wall, "from" | "to">): Run | undefined {
  if (from.y === to.y)
    return { isAcross: true, across: from.y, from: Math.min(from.x, to.x), to: Math.max(from.x, to.x) };
  if (from.x === to.x)
    return { isAcross: false, across: from.x, from: Math.min(from.y, to.y), to: Math.max(from.y, to.y) };
  return undefined;
}

const wallOf = ({ isAcross, across, from, to }: Run, routeClass: string): Wall =>
  isAcross
    ? { from: { x: from, y: across }, to: { x: to, y: across }, routeClass }
    : { from: { x: across, y: from }, to: { x: across, y: to }, routeClass };

const isInLine = (a: Run, b: Run): boolean => a.isAcross === b.isAcross && a.across === b.across;

/** The parts of a run that no other in line with it covers. */
const without = (run: Run, others: readonly Run[]): Run[] =>
  others
    .filter((other) => isInLine(run, other))
    .reduce<Run[]>(
      (left, other) =>
        left.flatMap((part) =>
          [
            { ...part, to: Math.min(part.to, other.from) },
            { ...part, from: Math.max(part.from, other.to) },
          ].filter(({ from, to }) => to > from),
        ),
      [run],
    );

/** The parts of a run that others in line with it cover, each once. */
const within = (run: Run, others: readonly Run[]): Run[] => {
  const uncovered = without(run, others);
  return uncovered.length === 0 ? [run] : without(run, uncovered);
};

const isHouseWall = ({ as = "wall" }: Wall): boolean => as === "wall";

/** Draws a room: its walls stand where none stood before. */
export function withRoom(draft: Scenario, area: Area, name: Text, routeClass: string): Scenario {
  const { plan } = draft;
  const standing = plan.walls.filter(isHouseWall).flatMap((wall) => runOf(wall) ?? []);
  const walls = edgesOf(area).flatMap((edge) =>
    without(edge, standing).map((part) => wallOf(part, routeClass)),
  );
  return {
    ...draft,
    plan: { ...plan, rooms: [...plan.rooms, { name, ...area }], walls: [...plan.walls, ...walls] },
  };
}

/** Takes a room away, with the walls that were its alone. */
export function withoutRoom(draft: Scenario, index: number): Scenario {
  const { plan } = draft;
  const rooms = plan.rooms.filter((_, at) => at !== index);
  const edges = rooms.flatMap(edgesOf);
  const walls = plan.walls.flatMap((wall): Wall[] => {
    const run = isHouseWall(wall) ? runOf(wall) : undefined;
    if (!run) return [wall];
    return within(run, edges).map((part) => ({ ...wall, ...wallOf(part, wall.routeClass) }));
  });
  return { ...draft, plan: { ...plan, rooms, walls } };
}

/** A cable can be run here too, under a floor or above a ceiling, along the axes from one point to the other. */
export function withRun(
  draft: Scenario,
  from: At,
  to: At,
  as: "floor" | "ceiling",
  routeClass: string,
): Scenario {
  const corner = { x: to.x, y: from.y };
  const legs = [
    { from, to: corner },
    { from: corner, to },
  ].filter((leg) => leg.from.x !== leg.to.x || leg.from.y !== leg.to.y);
  const walls = [...draft.plan.walls, ...legs.map((leg): Wall => ({ ...leg, routeClass, as }))];
  return { ...draft, plan: { ...draft.plan, walls } };
}

/** How cables run at one wall, floor or ceiling. */
export const withRouteClass = (draft: Scenario, wall: number, routeClass: string): Scenario => ({
  ...draft,
  plan: {
    ...draft.plan,
    walls: draft.plan.walls.map((one, at) => (at === wall ? { ...one, routeClass } : one)),
  },
});

/** Takes away a run under a floor or above a ceiling. */
export const withoutRun = (draft: Scenario, wall: number): Scenario => ({
  ...draft,
  plan: { ...draft.plan, walls: draft.plan.walls.filter((one, at) => at !== wall || isHouseWall(one)) },
});

/** The wall nearest to a point, and the point of it that is nearest; undefined where there is none. */
export function nearestWall(
  { walls }: Pick<Plan, "walls">,
  { x, y }: At,
): { index: number; at: At; distanceSteps: number } | undefined {
  let best: { index: number; at: At; distanceSteps: number } | undefined;
  for (const [index, { from, to }] of walls.entries()) {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const share = Math.min(
      1,
      Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1)),
    );
    const at = { x: Math.round(from.x + share * dx), y: Math.round(from.y + share * dy) };
    const distanceSteps = Math.hypot(at.x - x, at.y - y);
    if (!best || distanceSteps < best.distanceSteps) best = { index, at, distanceSteps };
  }
  return best;
}

/** Puts a station where it can be reached: on the nearest wall, a step aside where another stands. */
export function withPlace(draft: Scenario, station: StationId, wanted: At): Scenario {
  const others = draft.plan.places.filter((place) => place.station !== station);
  const at = nearestWall(draft.plan, wanted)?.at ?? wanted;
  const taken = new Set(others.map(({ at: { x, y } }) => `${x} ${y}`));
  const free = aside
    .map(([dx, dy]) => ({ x: at.x + dx, y: at.y + dy }))
    .find(
      ({ x, y }) =>
        !taken.has(`${x} ${y}`) && x >= 0 && y >= 0 && x <= draft.plan.width && y <= draft.plan.height,
    );
  return { ...draft, plan: { ...draft.plan, places: [...others, { station, at: free ?? at }] } };
}

const aside = [
  [0, 0],
  [4, 0],
  [-4, 0],
  [0, 4],
  [0, -4],
  [8, 0],
  [-8, 0],
] as const;
