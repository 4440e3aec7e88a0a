import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { statedCurrentA } from "./electrical-model.ts";
import { zoneTreeOf } from "./zone-tree.ts";

/** The most a zone may carry: the least of its fuse and all devices before it. Undefined while one is not known. */
export function zoneRatingA(model: CircuitModel, zone: Zone): number | undefined {
  const { ratingA } = zone.upstream;
  const parent = zoneTreeOf(model).parentOf(zone);
  if (ratingA === undefined || !parent) return ratingA;
  const beforeA = zoneRatingA(model, parent.zone);
  return beforeA === undefined ? undefined : Math.min(ratingA, beforeA);
}

/**
 * The most a point is taken to draw in the load case of the voltage drop, where no loads are stated, in amperes: a socket outlet 20 A (On-Site Guide
 * Appendix H), a connection unit its fuse or, where that is less, all that hangs on it, a lamp or an appliance its own
 * load; never more than the device or fuse before it. Undefined where a connection unit's fuse is not
 * known. What a point can draw at worst is another thing: `pointDemand`.
 */
export function loadCaseA(model: CircuitModel, station: StationId, zoneA: number): number | undefined {
  const kind = model.stations.get(station)?.kind;
  if (kind === "socket-outlet") return Math.min(ringLimits.designFarEndA, zoneA);
  if (kind !== "fcu") return Math.min(statedCurrentA(model, station) ?? Infinity, zoneA);
  const fuseA = model.stations.get(station)?.settings?.fuseRatingA;
  if (fuseA === undefined) return undefined;
  const beyond = zoneTreeOf(model).childOf(station);
  const mostA = Math.min(fuseA, zoneA);
  if (!beyond || beyond.points.length === 0) return mostA;
  let sumA = 0;
  for (const point of beyond.points) sumA += loadCaseA(model, point, mostA) ?? mostA;
  return Math.min(mostA, sumA);
}
