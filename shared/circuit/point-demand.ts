import type { StationId } from "../board/ids.ts";
import { socketOutletDemandA } from "../trade/accessory-rating.ts";
import { plugLoadA } from "../trade/plug-load.ts";
import { supply } from "../trade/supply.ts";
import { defaults } from "./defaults.ts";
import type { CircuitModel } from "./model.ts";
import { isLightingPoint } from "./zone-kinds.ts";

/** What a point can draw at worst, or the field of the wiring format that keeps it from being known. */
export type PointDemand = { demandA: number } | { lacks: string };

/**
 * The most a point can draw at worst, in amperes: 13 A a single and 20 A a twin socket outlet, whatever is stated to be
 * plugged in there, a connection unit its fuse, a lighting point its stated watts or 100 W, any other its stated load,
 * at 230 V. What it is taken to draw for the voltage drop is another thing: `loadCaseA`.
 */
export const pointDemand = (model: CircuitModel, id: StationId): PointDemand => {
  const station = model.stations.get(id);
  const { gangs, fuseRatingA } = station?.settings ?? {};
  if (station?.kind === "socket-outlet")
    return gangs === undefined ? { lacks: "gangs" } : { demandA: socketOutletDemandA(gangs) };
  if (station?.kind === "fcu")
    return fuseRatingA === undefined ? { lacks: "fuseRatingA" } : { demandA: fuseRatingA };
  const loadW = statedLoadW(model, id) ?? (isLightingPoint(model, id) ? defaults.lampW : undefined);
  return loadW === undefined ? { lacks: "powerW" } : { demandA: loadW / supply.nominalV };
};

/** Stated load of a station in watts; undefined where none is stated. */
export const statedLoadW = (model: CircuitModel, id: StationId): number | undefined =>
  model.loadsAt.get(id)?.reduce((sum, { powerW }) => sum + powerW, 0);

/**
 * Stated load of a station in amperes, appliance by appliance: one sold as 3 kW counts as the 13 A of its plug or fuse.
 * Undefined where none is stated.
 */
export const statedLoadA = (model: CircuitModel, id: StationId): number | undefined =>
  model.loadsAt.get(id)?.reduce((sumA, { powerW }) => sumA + plugLoadA(powerW), 0);
