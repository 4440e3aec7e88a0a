import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { oncePerModel } from "./once-per-model.ts";

/** Which zone each fused zone hangs on, and by which connection unit. */
export interface ZoneTree {
  /** Zones on a way's device, with all that hangs on them by fuses, nearest first. */
  circuits: { root: Zone; zones: Zone[] }[];
  parentOf(zone: Zone): { zone: Zone; fcu: StationId } | undefined;
  childOf(fcu: StationId): Zone | undefined;
  rootOf(zone: Zone): Zone;
  /** Fuses between a zone and its way's device. */
  depthOf(zone: Zone): number;
}

/** The zones of a model as trees. Where several fuses feed one zone the first by id counts. */
export const zoneTreeOf = oncePerModel((model: CircuitModel): ZoneTree => {
  const parents = new Map<Zone, { zone: Zone; fcu: StationId }>();
  const children = new Map<StationId, Zone>();
  for (const { fcu, from, to } of model.fusedLinks) {
    if (!to.isFused) continue;
    children.set(fcu, to);
    if (!parents.has(to)) parents.set(to, { zone: from, fcu });
  }
  const chain = (zone: Zone): Zone[] => {
    const passed = [zone];
    for (let up = parents.get(zone); up && !passed.includes(up.zone); up = parents.get(up.zone))
      passed.push(up.zone);
    return passed;
  };
  const rootOf = (zone: Zone): Zone => chain(zone).at(-1)!;
  const circuits = new Map<Zone, Zone[]>();
  for (const zone of model.zones) {
    const root = rootOf(zone);
    const known = circuits.get(root);
    if (known) known.push(zone);
    else circuits.set(root, [zone]);
  }
  return {
    circuits: [...circuits].map(([root, zones]) => ({ root, zones })),
    parentOf: (zone) => parents.get(zone),
    childOf: (fcu) => children.get(fcu),
    rootOf,
    depthOf: (zone) => chain(zone).length - 1,
  };
});
