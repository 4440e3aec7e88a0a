import type { StationId } from "../board/ids.ts";
import { disturbedWays } from "../circuit/disturbed-ways.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";

/** Which zone each fused zone hangs on, and by which connection unit. */
export interface ZoneTree {
  /**
   * Zones on one way's device, with all that hangs on them by fuses, nearest first. Zones that two ways feed are left
   * out: no device is the one before them, and they are a danger of their own.
   */
  circuits: { root: Zone; zones: Zone[] }[];
  /** Undefined for a zone on a device, and for one that several fuses feed. */
  parentOf(this: void, zone: Zone): { zone: Zone; fcu: StationId } | undefined;
  childOf(this: void, fcu: StationId): Zone | undefined;
  /** Fuses between a zone and its way's device; undefined where several feed it or a zone before it. */
  depthOf(this: void, zone: Zone): number | undefined;
}

/** Circuits whose currents mean something: those in which no conductor is crossed. */
export const circuitsWithFigures = (model: CircuitModel): ZoneTree["circuits"] =>
  zoneTreeOf(model).circuits.filter(({ root }) => !disturbedWays(model).has(root.upstream.station));

/** The zones of a model as trees. */
export const zoneTreeOf = oncePerModel((model: CircuitModel): ZoneTree => {
  const parents = new Map<Zone, { zone: Zone; fcu: StationId }>();
  const children = new Map<StationId, Zone>();
  for (const { fcu, from, to } of model.fusedLinks) {
    if (!to.isFused) continue;
    children.set(fcu, to);
    if (to.sources.length === 1) parents.set(to, { zone: from, fcu });
  }
  const depthOf = (zone: Zone): number | undefined => {
    let depth = 0;
    for (let at = zone; at.isFused; depth++) {
      const parent = parents.get(at);
      // No way of building puts more fuses in a row than there are zones; a circle of them has no depth.
      if (!parent || depth > model.zones.length) return undefined;
      at = parent.zone;
    }
    return depth;
  };
  const byWay = new Map<StationId | undefined, Zone[]>();
  for (const zone of model.zones) {
    const [way] = zone.ways;
    const known = byWay.get(way);
    if (known) known.push(zone);
    else byWay.set(way, [zone]);
  }
  const circuits = [...byWay.values()].flatMap((zones) => {
    const root = zones.find(({ isFused }) => !isFused);
    return root ? [{ root, zones }] : [];
  });
  return { circuits, parentOf: (zone) => parents.get(zone), childOf: (fcu) => children.get(fcu), depthOf };
});
