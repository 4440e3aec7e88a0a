import { lanePitchMm } from "../../../kiosk/geometry/cable-width.ts";
import { toPx } from "../../../kiosk/geometry/fit-plan.ts";
import { distanceToLine } from "../../../kiosk/geometry/point.ts";
import { pointsAlong } from "../../../kiosk/geometry/stray.ts";
import { cableStrayPx } from "../../../kiosk/plan/cable-stray.ts";
import type { DrawnCable } from "../../../kiosk/plan/draw-cables.ts";
import type { PlanDrawing } from "../../../kiosk/plan/draw-plan.ts";
import { isTwoSided } from "../../../kiosk/plan/plate-text.ts";
import { stationOf } from "../../../shared/board/ids.ts";

/** Cables whose judged routes run along each other for so far need lanes beside each other. */
const besideMm = 5;
const mostBeside = 2;

/**
 * What is wrong with where cables are drawn against the routes they are judged on. A drawn cable passes the same
 * corners in the same order, never further off (`kiosk/geometry/stray.ts`) than a lane and a half, and
 * - one lane more for each other cable on the same wall, two at most, as no two are drawn on each other;
 * - two lanes more where it joins a station with two sides, whose far side it may have to come to.
 */
export const routeComplaints = ({ cables, ground }: PlanDrawing, mmPx: number): string[] => {
  const routeOf = ({ cable }: DrawnCable) => cable.path.map((point) => toPx(ground.fit, point));
  const runsBeside = (one: DrawnCable, two: DrawnCable): boolean => {
    const shared = pointsAlong(routeOf(one)).filter((point) => distanceToLine(point, routeOf(two)) < 1);
    const [a, b] = [shared[0], shared.at(-1)];
    return a !== undefined && b !== undefined && Math.hypot(b.x - a.x, b.y - a.y) > besideMm * mmPx;
  };
  return cables.flatMap((drawn) => {
    const { id, from, to } = drawn.cable;
    const beside = cables.filter((other) => other !== drawn && runsBeside(drawn, other)).length;
    const isSided = ground.stations.some(
      (station) => [stationOf(from), stationOf(to)].includes(station.id) && isTwoSided(station),
    );
    const lanes = 1.5 + Math.min(mostBeside, beside) + (isSided ? 2 : 0);
    const strayMm = cableStrayPx(drawn.cable, drawn.line, ground, mmPx) / mmPx;
    return strayMm > lanes * lanePitchMm ? [`${id} strays ${strayMm.toFixed(1)} mm from its route`] : [];
  });
};
