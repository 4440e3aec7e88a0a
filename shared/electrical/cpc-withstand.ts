import type { CircuitModel, Zone } from "../circuit/model.ts";
import type { CableId } from "../board/ids.ts";
import { adiabaticCurrentA, faultEnergy, leastCsaMm2 } from "./adiabatic.ts";
import { type CircuitLoops, earthLoopsOf, supplyLoopOhm } from "./earth-loops.ts";
import { electricalOf } from "./electrical-model.ts";
import { loopOhm } from "./fault-loop.ts";
import { zoneTreeOf } from "./zone-tree.ts";

export interface CpcWithstand {
  cable: CableId;
  cpcCsaMm2: number;
  leastCsaMm2: number;
  faultA: number;
  /** Energy over the square of the current: how long it flows. */
  disconnectionS: number;
}

/**
 * What the protective conductor of each cable must withstand in a fault at its far end: S >= sqrt(I²t) / k with
 * I = U0 / Zs. Cables about which nothing can be said (a circuit-breaker that opens at once, without its maker's
 * let-through energy) are left out.
 */
export function cpcWithstandOf(model: CircuitModel): CpcWithstand[] {
  const { depthOf } = zoneTreeOf(model);
  const supplyOhm = supplyLoopOhm(model);
  return earthLoopsOf(model).circuits.flatMap((circuit) =>
    circuit.zones.flatMap((zone) => {
      if (depthOf(zone) === undefined) return [];
      const energyOf = leastEnergy(model, circuit, zone);
      return zone.cables.flatMap(({ id, cpcCsaMm2, conductors }): CpcWithstand[] => {
        const r1 = furthest(model, conductors, "live");
        const r2 = furthest(model, conductors, "earth");
        if (cpcCsaMm2 === undefined || r1 === undefined || r2 === undefined) return [];
        const faultA = adiabaticCurrentA(loopOhm(supplyOhm, r1 + r2));
        const energyA2s = energyOf(faultA);
        if (energyA2s === undefined) return [];
        const disconnectionS = energyA2s / faultA ** 2;
        return [{ cable: id, cpcCsaMm2, leastCsaMm2: leastCsaMm2(energyA2s), faultA, disconnectionS }];
      });
    }),
  );
}

/** The larger own resistance of the two ends of a cable's conductor; undefined where it has none or none is reached. */
function furthest(
  model: CircuitModel,
  conductors: Zone["cables"][number]["conductors"],
  of: "live" | "earth",
): number | undefined {
  const { copper, ownOhm } = electricalOf(model);
  const ends = conductors.flatMap((each) => (each.class === of ? [each.fromNode, each.toNode] : []));
  if (ends.length === 0) return undefined;
  const ohm = Math.max(...ends.map((node) => ownOhm[copper.nodeIndex.get(node)!]!));
  return ohm < Infinity ? ohm : undefined;
}

/** The least energy that the way's device, its RCD or a fuse on the way lets through, of those that can tell. */
function leastEnergy(
  model: CircuitModel,
  circuit: CircuitLoops,
  zone: Zone,
): (faultA: number) => number | undefined {
  const { device, ratingA, letThroughA2s, rcdMa } = circuit.device;
  const energies = [faultEnergy({ device, ratingA, letThroughA2s, rcdMa })];
  const { parentOf } = zoneTreeOf(model);
  for (let at: Zone | undefined = zone; at?.isFused; at = parentOf(at)?.zone) {
    const fuseA = at.upstream.ratingA;
    if (fuseA !== undefined) energies.push(faultEnergy({ device: "BS 1362", ratingA: fuseA }));
  }
  return (faultA) => {
    let least: number | undefined;
    for (const energyOf of energies) {
      const energyA2s = energyOf(faultA);
      if (energyA2s !== undefined && energyA2s < (least ?? Infinity)) least = energyA2s;
    }
    return least;
  };
}
