import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { pointsBeyond } from "../circuit/zone-kinds.ts";

/** Met or not; undefined while a value is not known that it hangs on. */
export type Held = boolean | undefined;

/** The parts of circuits a station takes its current from. */
const zonesFeeding = (model: CircuitModel, id: StationId): Zone[] => {
  const asPoint = model.zones.filter(({ points }) => points.includes(id));
  return asPoint.length > 0 ? asPoint : model.zones.filter(({ stations }) => stations.includes(id));
};

/** True where a point is in a ring that passes through a way. */
export const isInRing = (model: CircuitModel, id: StationId): boolean =>
  zonesFeeding(model, id).some(({ shape }) => shape.rings.some(({ stations }) => stations.includes(id)));

/**
 * Whether a point is alone on a spur without a fuse: a branch from a ring, from the way or from cable of full rating
 * that feeds it and nothing else. The end of a row is no spur, nor is the only leg of a way.
 */
export function isOnOwnSpur(model: CircuitModel, id: StationId): Held {
  const [zone, ...others] = zonesFeeding(model, id);
  if (!zone || others.length > 0 || zone.isFused || model.stations.get(id)?.kind === "fcu") return false;
  const { spurs, lacking } = zone.spurs;
  const spur = spurs.find(({ points }) => points.includes(id));
  if (spur) return spur.points.length === 1 && !spur.first.hasLoop;
  if (lacking.some((branch) => pointsBeyond(zone, branch).includes(id))) return undefined;
  const { branches } = zone.shape;
  let first = branches.find(({ isPoint, far }) => isPoint && far === id);
  if (!first || first.pointCount !== 1 || first.hasLoop) return false;
  for (let up = branches[first.parent ?? -1]; up?.pointCount === 1; up = branches[first.parent ?? -1])
    first = up;
  // Of full rating all the way: it is a spur where something else leaves the same place too.
  return branches.some(
    (other) => other !== first && other.parent === first.parent && other.near === first.near,
  );
}

/** Whether current to a station passes, on every way it can take, a fuse of which `suits` is true. */
export function isBehindFuse(model: CircuitModel, id: StationId, suits: (fcu: StationId) => Held): Held {
  const behind = (zone: Zone, passed: ReadonlySet<Zone>): Held => {
    const links = model.fusedLinks.filter(({ to, from }) => to === zone && !passed.has(from));
    if (!zone.isFused || links.length === 0) return false;
    const beyond = new Set([...passed, zone]);
    return all(links.map(({ fcu, from }) => either(suits(fcu), () => behind(from, beyond))));
  };
  const zones = zonesFeeding(model, id);
  return zones.length > 0 && all(zones.map((zone) => behind(zone, new Set([zone]))));
}

const either = (one: Held, other: () => Held): Held => {
  if (one === true) return true;
  const second = other();
  return second === true ? true : one === undefined ? undefined : second;
};

const all = (each: readonly Held[]): Held =>
  each.includes(false) ? false : each.includes(undefined) ? undefined : true;
