import type { CableId } from "../board/ids.ts";
import type { CircuitModel, Ring, Zone } from "../circuit/model.ts";
import { boardGaps, cableGaps, type Gap } from "./circuit-gaps.ts";
import { electricalOf, statedCurrentA } from "./electrical-model.ts";
import { cableCurrents, type CurrentLoad, loadNodes, solveWiring } from "./wiring-network.ts";
import { circuitsWithFigures } from "./zone-tree.ts";

export interface RingShare {
  ring: Ring;
  zone: Zone;
  /** Current in each cable of the ring with all stated loads on. */
  currentA: Map<CableId, number>;
  /** The same with only the loads that run for hours. */
  longRunningA: Map<CableId, number>;
}

/**
 * Currents round every ring with the stated loads of its circuit, line and neutral at 70 °C. Rings of circuits without
 * stated loads are left out; those about which something is not known have gaps instead.
 */
export function ringSharesOf(model: CircuitModel): { shares: RingShare[]; gaps: Gap[] } {
  const result: { shares: RingShare[]; gaps: Gap[] } = { shares: [], gaps: [] };
  for (const { root, zones } of circuitsWithFigures(model)) {
    const points = zones.flatMap((zone) => zone.points);
    if (root.shape.rings.length === 0 || !points.some((point) => model.loadsAt.has(point))) continue;
    const gaps = [
      ...boardGaps(model, zones),
      ...cableGaps(zones).filter(({ field }) => field !== "cpcCsaMm2"),
    ];
    result.gaps.push(...gaps);
    if (gaps.length > 0) continue;
    const { copper, net } = electricalOf(model);
    const currents = (isCounted: (isLongRunning: boolean) => boolean): Map<CableId, number> => {
      const loads = points.flatMap((point): CurrentLoad[] => {
        const nodes = loadNodes(copper, point);
        const loadsHere = model.loadsAt
          .get(point)
          ?.filter(({ isLongRunning = false }) => isCounted(isLongRunning));
        const currentA = loadsHere?.length === 0 ? undefined : statedCurrentA(model, point, loadsHere);
        return nodes && currentA !== undefined ? [{ ...nodes, currentA }] : [];
      });
      return cableCurrents(copper, solveWiring(net, loads));
    };
    const currentA = currents(() => true);
    const longRunningA = currents((isLongRunning) => isLongRunning);
    for (const ring of root.shape.rings) result.shares.push({ ring, zone: root, currentA, longRunningA });
  }
  return result;
}
