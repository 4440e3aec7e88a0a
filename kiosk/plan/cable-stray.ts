import { stationOf } from "../../shared/board/ids.ts";
import type { SensedCable } from "../../shared/protocol/bench-view.ts";
import { lanePitchMm } from "../geometry/cable-width.ts";
import { toPx } from "../geometry/fit-plan.ts";
import { centreOf, type Point, type Rect } from "../geometry/point.ts";
import { holds, pointsAlong, strayPx } from "../geometry/stray.ts";
import type { PlanGround } from "./plan-ground.ts";

/** The rectangle round another that keeps a distance from it. */
const grown = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

/** The rectangle that holds another and a point. */
const withPoint = ({ x, y, width, height }: Rect, point: Point): Rect => {
  const [left, top] = [Math.min(x, point.x), Math.min(y, point.y)];
  return {
    x: left,
    y: top,
    width: Math.max(x + width, point.x) - left,
    height: Math.max(y + height, point.y) - top,
  };
};

/**
 * How far the drawn line of a cable strays from its judged route, in pixels. Two lanes round a plate that stands on
 * the route, and between a plate of its own and its place on the plan, count for nothing. Infinity
 * where it is more than `mostPx`, and found sooner.
 */
export const cableStrayPx = (
  { from, to, path }: Pick<SensedCable, "from" | "to" | "path">,
  line: readonly Point[],
  { fit, plates }: Pick<PlanGround, "fit" | "plates">,
  mmPx: number,
  mostPx = Infinity,
): number => {
  const route = path.map((point) => toPx(fit, point));
  const [start, end] = [route[0], route.at(-1)];
  if (!start || !end || route.length < 2) return 0;
  const lanePx = lanePitchMm * mmPx;
  const routed = pointsAlong(route);
  const ends = { [stationOf(from)]: start, [stationOf(to)]: end };
  const round = plates.flatMap((plate) => {
    const place = ends[plate.id];
    const inTheWay = grown(plate, lanePx / 2);
    if (!place && !routed.some((point) => holds(inTheWay, point))) return [];
    return grown(place ? withPoint(plate, place) : plate, lanePx * 1.5);
  });
  const plateOf = (id: string): Point[] => plates.filter((plate) => plate.id === id).map(centreOf);
  return strayPx([...plateOf(stationOf(from)), ...line, ...plateOf(stationOf(to))], route, round, mostPx);
};
