import type { StationId } from "../board/ids.ts";
import { DisjointSets } from "../circuit/disjoint-sets.ts";
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

/** The zones of a model as trees. */
export const zoneTreeOf = oncePerModel((model: CircuitModel): ZoneTree => {
  const parents = new Map<Zone, { zone: Zone; fcu: StationId }>();
  const children = new Map<StationId, Zone>();
  const sets = new DisjointSets(model.zones.length);
  for (const { fcu, from, to } of model.fusedLinks) {
    sets.join(from.index, to.index);
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
  const groups = new Map<number, Zone[]>();
  for (const zone of model.zones) {
    const known = groups.get(sets.find(zone.index));
    if (known) known.push(zone);
    else groups.set(sets.find(zone.index), [zone]);
  }
  const circuits = [...groups.values()].flatMap((zones) => {
    const [root, ...others] = zones.filter(({ isFused }) => !isFused);
    return root && others.length === 0 && root.sources.length === 1 ? [{ root, zones }] : [];
  });
  return { circuits, parentOf: (zone) => parents.get(zone), childOf: (fcu) => children.get(fcu), depthOf };
});
