import type { CableId } from "../board/ids.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { overloadFactor, worstThroughA } from "./coordination.ts";
import { heaviestPoint } from "./heaviest-point.ts";
import type { Branch, CircuitModel, Zone } from "./model.ts";
import { carriesLoad, hasSpurRules, isRingCircuit, pointsBeyond } from "./zone-kinds.ts";

/**
 * What Iz of each cable must be at least, in amperes: In of the device or fuse before it, or In / 0.725 behind a
 * rewireable fuse (BS 7671 433.1.1, 433.1.202); 20 A in a ring (433.1.204); in a spur what the heaviest of its points
 * can draw, where that is less. A cable that no device feeds, a spur that ends in an empty box, or one of which a value is not
 * known, is left out.
 */
export const neededRatingsA = (model: CircuitModel): ReadonlyMap<CableId, number> =>
  new Map(model.zones.flatMap((zone) => [...neededIn(model, zone)]));

/** True for a branch with nothing beyond it but boxes. */
const endsNowhere = (model: CircuitModel, { shape }: Zone, { index, end }: Branch): boolean =>
  shape.branches.slice(index, end).every(({ far }) => model.stations.get(far)?.kind === "junction-box");

function neededIn(model: CircuitModel, zone: Zone): Map<CableId, number> {
  const { upstream, shape, spurs, cables } = zone;
  const factor = overloadFactor(model, upstream);
  const deviceA = upstream.ratingA;
  const needed = new Map<CableId, number>();
  if (deviceA !== undefined && factor !== undefined) {
    for (const cable of cables.filter(carriesLoad)) needed.set(cable.id, deviceA / factor);
    if (hasSpurRules(model, zone))
      for (const branch of spurs.spurs.flatMap(({ branches }) => branches)) {
        const points = pointsBeyond(zone, branch);
        if (points.length === 0 && !endsNowhere(model, zone, branch)) continue;
        const worst = points.length === 0 ? undefined : heaviestPoint(model, points);
        for (const { id } of branch.run.cables.filter(carriesLoad))
          if (worst && "demandA" in worst) needed.set(id, worstThroughA(worst.demandA, deviceA, factor));
          else needed.delete(id);
      }
  }
  if (isRingCircuit(model, zone))
    for (const { id } of shape.rings.flatMap((ring) => ring.cables).filter(carriesLoad))
      needed.set(id, ringLimits.leastCapacityA);
  return needed;
}
