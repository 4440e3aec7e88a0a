import { stationOf } from "../../shared/board/ids.ts";
import { lanePitchMm } from "../geometry/cable-width.ts";
import { toPx } from "../geometry/fit-plan.ts";
import type { Point } from "../geometry/point.ts";
import { sharedRunPx } from "../geometry/shared-run.ts";
import { cableStrayPx } from "./cable-stray.ts";
import type { DrawnCable } from "./draw-cables.ts";
import type { PlanGround } from "./plan-ground.ts";
import { isTwoSided } from "./plate-text.ts";

/** What a cable may lie off its judged route, in lanes: without more, for others on the same wall, and round two sides. */
const free = { lanes: 1.5, mostBesideLanes: 2, twoSidedLanes: 2 };

/** Cables whose judged routes run along each other for so far need lanes beside each other. */
const besideMm = 5;

/** How far each line was found to stray, for whoever asks again: of a new cable's neighbours none has moved. */
const found = new WeakMap<readonly Point[], { path: unknown; ground: PlanGround; px: number }>();

/** How far a cable strays from its judged route, 0 where any may. */
const strayOf = ({ cable, line }: DrawnCable, ground: PlanGround, mmPx: number): number => {
  const known = found.get(line);
  if (known?.path === cable.path && known.ground === ground) return known.px;
  const strayPx = (mostPx?: number) => cableStrayPx(cable, line, ground, mmPx, mostPx);
  const px = strayPx(free.lanes * lanePitchMm * mmPx) < Infinity ? 0 : strayPx();
  found.set(line, { path: cable.path, ground, px });
  return px;
};

/**
 * How far the cables lie off the routes they were judged on, beyond what they may, in lanes, all of them together. No
 * two are drawn on each other, so on a wall that several run along one may lie a lane further off for each other; and
 * at a station with two sides one may have to come to the far one.
 */
export const strayLanes = (cables: readonly DrawnCable[], ground: PlanGround, mmPx: number): number => {
  const { fit, stations } = ground;
  const lanePx = lanePitchMm * mmPx;
  const routes = new Map<DrawnCable, Point[]>();
  const routeOf = (drawn: DrawnCable): Point[] => {
    const route = routes.get(drawn) ?? drawn.cable.path.map((point) => toPx(fit, point));
    routes.set(drawn, route);
    return route;
  };
  const freeLanes = (drawn: DrawnCable): number => {
    const ends = [drawn.cable.from, drawn.cable.to].map(stationOf);
    const isSided = stations.some((station) => ends.includes(station.id) && isTwoSided(station));
    const beside = cables.filter(
      (other) => other !== drawn && sharedRunPx(routeOf(drawn), routeOf(other)) > besideMm * mmPx,
    ).length;
    return free.lanes + Math.min(free.mostBesideLanes, beside) + (isSided ? free.twoSidedLanes : 0);
  };
  return cables.reduce((sum, drawn) => {
    const strayPx = strayOf(drawn, ground, mmPx);
    return strayPx === 0 ? sum : sum + Math.max(0, strayPx / lanePx - freeLanes(drawn));
  }, 0);
};
