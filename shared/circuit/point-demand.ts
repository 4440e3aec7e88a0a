import type { StationId } from "../board/ids.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { lightingLimits } from "../trade/lighting-limits.ts";
import { supply } from "../trade/supply.ts";
import type { CircuitModel } from "./model.ts";
import { worstCaseA } from "./spur-overload.ts";
import { isLightingPoint } from "./zone-kinds.ts";

/** What a point can draw at worst, or the field of the wiring format that keeps it from being known. */
export type PointDemand = { demandA: number } | { lacks: string };

/**
 * The most a point can draw, in amperes: 13 A a single and 20 A a twin socket outlet, a connection unit its fuse, a
 * lighting point its stated watts or 100 W, any other its stated load, at 230 V.
 */
export const pointDemand = (model: CircuitModel, id: StationId): PointDemand => {
  const worstA = worstCaseA(model, id);
  if (worstA !== undefined) return { demandA: worstA };
  if (isLightingPoint(model, id)) return { demandA: lightingLimits.assumedLampW / supply.nominalV };
  const kind = model.stations.get(id)?.kind;
  return { lacks: kind === "socket-outlet" ? "gangs" : kind === "fcu" ? "fuseRatingA" : "powerW" };
};

/** Stated load of a station in watts; undefined where none is stated. */
export const statedLoadW = (model: CircuitModel, id: StationId): number | undefined =>
  model.loadsAt.get(id)?.reduce((sum, { powerW }) => sum + powerW, 0);

/**
 * Stated load of a station in amperes at 230 V, appliance by appliance: one sold as 3 kW counts as the 13 A of its
 * plug or fuse. Undefined where none is stated.
 */
export const statedLoadA = (model: CircuitModel, id: StationId): number | undefined =>
  model.loadsAt.get(id)?.reduce((sum, { powerW }) => {
    const currentA = powerW / supply.nominalV;
    const isFullLoad = powerW <= fuseLimits.fullLoadApplianceW;
    return sum + (isFullLoad ? Math.min(currentA, fuseLimits.fullLoadCountsAsA) : currentA);
  }, 0);
