import { socketOutletDemandA } from "../trade/accessory-rating.ts";
import { supply } from "../trade/supply.ts";
import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Spur } from "./model.ts";

/**
 * The most a point can draw, in amperes: 13 A a single and 20 A a twin socket outlet, an FCU its fuse, anything
 * else its stated load at 230 V. Undefined where that is not said.
 */
export const worstCaseA = (model: CircuitModel, id: StationId): number | undefined => {
  const station = model.stations.get(id);
  if (!station) return undefined;
  const { gangs, fuseRatingA } = station.settings ?? {};
  if (station.kind === "socket-outlet") return gangs && socketOutletDemandA(gangs);
  if (station.kind === "fcu") return fuseRatingA;
  const loads = model.loadsAt.get(id);
  return loads && loads.reduce((sum, { powerW }) => sum + powerW, 0) / supply.nominalV;
};

/**
 * Worst case of a spur against what its first cable may carry, both in amperes, where the worst case really is
 * more and both are known; nothing else, for the reason against a spur of several points is the arrangement.
 */
export const spurOverload = (model: CircuitModel, { first, points }: Spur): Record<string, number> => {
  const deviceA = first.run.cables[0]?.upstream?.ratingA;
  const each = points.map((id) => worstCaseA(model, id));
  const { ratingA } = first.run;
  if (ratingA === undefined || deviceA === undefined || each.some((worstA) => worstA === undefined))
    return {};
  const worstA = Math.min(
    deviceA,
    each.reduce<number>((sum, pointA) => sum + (pointA ?? 0), 0),
  );
  return worstA > ratingA ? { worstA, ratingA } : {};
};
