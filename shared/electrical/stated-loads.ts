import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { cookerDemandA } from "../trade/cooker-demand.ts";
import { isCooking } from "../circuit/own-circuit-wants.ts";
import { statedCurrentA } from "./electrical-model.ts";
import { zoneTreeOf } from "./zone-tree.ts";

/**
 * What each point of a circuit takes with the stated loads alone, in amperes: lamps 100 W where none is stated, a load
 * behind a fuse no more than that fuse lets all of them have, cooking at its diversity.
 */
export function statedLoads(model: CircuitModel, zones: readonly Zone[]): Map<StationId, number> {
  const loads = new Map<StationId, number>();
  for (const point of zones.flatMap((zone) => zone.points)) {
    const currentA = statedCurrentA(model, point);
    if (currentA !== undefined) loads.set(point, currentA);
  }
  scale(
    [...loads.keys()].filter((point) => isCooking(model, point)),
    loads,
    (sumA) => cookerDemandA(sumA, false),
  );
  const { childOf } = zoneTreeOf(model);
  const behind = (fcu: StationId): StationId[] => [
    fcu,
    ...(childOf(fcu)?.points ?? []).flatMap((point) => (childOf(point) ? behind(point) : [point])),
  ];
  for (const zone of [...zones].reverse())
    for (const fcu of zone.points) {
      const fuseA = model.stations.get(fcu)?.settings?.fuseRatingA;
      if (model.stations.get(fcu)?.kind === "fcu" && fuseA !== undefined)
        scale(behind(fcu), loads, () => fuseA);
    }
  return loads;
}

/** Brings some loads down in proportion, so that together they take no more than is allowed of their sum. */
function scale(
  points: readonly StationId[],
  loads: Map<StationId, number>,
  mostA: (sumA: number) => number,
): void {
  const sumA = points.reduce((sum, point) => sum + (loads.get(point) ?? 0), 0);
  const part = sumA > 0 ? mostA(sumA) / sumA : 1;
  if (part >= 1) return;
  for (const point of points) loads.set(point, (loads.get(point) ?? 0) * part);
}
