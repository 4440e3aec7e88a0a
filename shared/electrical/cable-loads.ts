import type { CableId } from "../board/ids.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { electricalOf } from "./electrical-model.ts";
import { zoneRatingA } from "./load-case.ts";
import { voltageDropsOf } from "./voltage-drops.ts";
import { cableCurrents } from "./wiring-network.ts";

/**
 * What each cable is asked to carry by the load cases of the voltage drop, in amperes: the rest of In shared out and, on
 * a branch, the point beyond it that rises most at its turn, never more than the device or fuse before it; or the
 * current with the stated loads where that is more. Cables of a circuit about which something is not known are left out.
 */
export function cableLoads(model: CircuitModel): Map<CableId, number> {
  const { points, stated, turns } = voltageDropsOf(model);
  const loads = new Map<CableId, number>();
  if (points.size === 0) return loads;
  // Not before: where no point has a figure no network is wanted.
  const { copper } = electricalOf(model);
  const all = new Map<CableId, number>();
  for (const solution of turns) {
    for (const [cable, currentA] of cableCurrents(copper, solution)) {
      all.set(cable, Math.max(all.get(cable) ?? 0, currentA));
    }
  }
  const statedA = stated ? cableCurrents(copper, stated) : new Map<CableId, number>();
  const zones = new Set([...points.values()].map(({ zone }) => zone));
  for (const zone of zones) {
    for (const { id } of zone.cables) loads.set(id, all.get(id) ?? 0);
    const mostA = zoneRatingA(model, zone) ?? Infinity;
    const { branches } = zone.shape;
    // From the tips inwards: each branch passes its largest rise on to the branch before it.
    const riseA = branches.map(({ far }) => points.get(far)?.riseA ?? 0);
    for (const { index, parent, run } of [...branches].reverse()) {
      if (parent !== undefined) riseA[parent] = Math.max(riseA[parent]!, riseA[index]!);
      for (const { id } of run.cables) loads.set(id, Math.min(mostA, (loads.get(id) ?? 0) + riseA[index]!));
    }
    for (const { id } of zone.cables) loads.set(id, Math.max(loads.get(id) ?? 0, statedA.get(id) ?? 0));
  }
  return loads;
}
