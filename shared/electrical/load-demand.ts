import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { cookerDemandA } from "../trade/cooker-demand.ts";
import { plugLoadA } from "../trade/plug-load.ts";
import type { ApplianceKind } from "../board/station-kinds.ts";
import { statedCurrentA } from "./electrical-model.ts";
import { zoneTreeOf } from "./zone-tree.ts";

const cooking: readonly (ApplianceKind | undefined)[] = ["cooker", "hob", "oven"];

/**
 * Ib of a circuit in amperes: the loads stated on it at 230 V, lamps 100 W where none is stated, all at once (no
 * diversity within one final circuit, but the allowance for cooking, On-Site Guide Table A2); what hangs on a
 * connection unit no more than its fuse. Undefined where nothing is stated.
 */
export function circuitDemandA(model: CircuitModel, root: Zone): number | undefined {
  let otherA = 0;
  let cookingA = 0;
  let isAnyStated = false;
  for (const station of root.points) {
    const currentA =
      model.stations.get(station)?.kind === "fcu" ? cappedA(model, station) : statedCurrentA(model, station);
    if (currentA === undefined) continue;
    isAnyStated = true;
    if (cooking.includes(model.stations.get(station)?.settings?.appliance)) cookingA += currentA;
    else otherA += currentA;
  }
  if (!isAnyStated) return undefined;
  const hasSocketOutlet = root.stations.some(
    (id) => model.stations.get(id)?.settings?.hasSocketOutlet === true,
  );
  return otherA + (cookingA > 0 ? cookerDemandA(cookingA, hasSocketOutlet) : 0);
}

/**
 * What the loads behind a connection unit ask of its fuse, in amperes: those stated at the unit itself and at all it
 * feeds; an appliance sold as 3 kW counts as 13 A. Undefined where nothing is stated.
 */
export function fusedDemandA(model: CircuitModel, fcu: StationId): number | undefined {
  const ownW = model.loadsAt.get(fcu);
  let sumA = ownW?.reduce((total, { powerW }) => total + plugLoadA(powerW), 0) ?? 0;
  let isAnyStated = ownW !== undefined;
  for (const station of zoneTreeOf(model).childOf(fcu)?.points ?? []) {
    const currentA = demandBehindA(model, station);
    if (currentA === undefined) continue;
    isAnyStated = true;
    sumA += currentA;
  }
  return isAnyStated ? sumA : undefined;
}

/** Stations behind a connection unit, through further units too. */
export function stationsBehind(model: CircuitModel, fcu: StationId): StationId[] {
  const zone = zoneTreeOf(model).childOf(fcu);
  return (zone?.points ?? []).flatMap((station) =>
    model.stations.get(station)?.kind === "fcu" ? [station, ...stationsBehind(model, station)] : [station],
  );
}

function demandBehindA(model: CircuitModel, station: StationId): number | undefined {
  if (model.stations.get(station)?.kind === "fcu") return cappedA(model, station);
  const loads = model.loadsAt.get(station);
  if (loads) return loads.reduce((sumA, { powerW }) => sumA + plugLoadA(powerW), 0);
  return isLightingPoint(model, station) ? statedCurrentA(model, station) : undefined;
}

/** What a connection unit passes on: never more than its fuse for long. */
function cappedA(model: CircuitModel, fcu: StationId): number | undefined {
  const demandA = fusedDemandA(model, fcu);
  const fuseA = model.stations.get(fcu)?.settings?.fuseRatingA ?? Infinity;
  return demandA === undefined ? undefined : Math.min(demandA, fuseA);
}
