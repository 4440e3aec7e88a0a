import type { CableId, StationId } from "../board/ids.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { isCable } from "./is-cable.ts";
import type { Branch, CableModel, CircuitModel, Zone } from "./model.ts";
import { hasSocketOutlet } from "./zone-kinds.ts";

/** The legs of a ring that was meant and does not close: none where none is meant, or what it takes to tell. */
export type OpenRing =
  | { is: "legs"; branches: readonly Branch[] }
  | { is: "no-device" }
  | { is: "unsized"; branches: readonly Branch[] };

/**
 * What of an unfused zone is a ring that does not close: all that leaves the way where the task wants a ring, else two
 * legs whose cable cannot carry a device as large as a ring has.
 */
export function openRingOf(model: CircuitModel, zone: Zone): OpenRing {
  const none: OpenRing = { is: "legs", branches: [] };
  const { legs, lacking } = zone.spurs;
  const { branches, rings, loops } = zone.shape;
  if (zone.isFused || rings.length > 0 || branches.length === 0) return none;
  const first = branches.filter(({ depth }) => depth === 1);
  // A loop that never reaches the way has to go first: it may be the ring that is meant.
  if (wantsRing(model, zone)) return loops.length > 0 ? none : { is: "legs", branches: first };
  if (!hasSocketOutlet(model, zone) || first.length < 2) return none;
  const { ratingA } = zone.upstream;
  if (ratingA === undefined) return { is: "no-device" };
  // On a smaller device nobody means a ring: its cables are judged as those of a radial.
  if (ratingA < ringLimits.leastDeviceA) return none;
  const unknown = lacking.filter(({ depth }) => depth === 1);
  if (unknown.length > 0 && legs.length + unknown.length > 1) return { is: "unsized", branches: unknown };
  // With two legs of several points, one of a single point is the spur from the way that it would be on a ring. A leg
  // that ends in a box with nothing beyond was on its way back.
  const fed = legs.filter((leg) => leg.pointCount > 0 || endsInBox(model, zone, leg));
  const long = fed.filter(({ pointCount }) => pointCount > 1);
  const meant = long.length > 1 ? long : fed;
  return { is: "legs", branches: meant.length > 1 ? meant : [] };
}

const endsInBox = (model: CircuitModel, zone: Zone, leg: Branch): boolean =>
  farEnds(zone, [leg]).some((id) => model.stations.get(id)?.kind === "junction-box");

const wantsRing = (model: CircuitModel, zone: Zone): boolean =>
  (model.wiring.wants ?? []).some(
    (want) => want.kind === "shape" && want.shape === "ring" && zone.stations.includes(want.of),
  );

/** Cables of an open ring that no ring may have as they are sized and run: to close it would not mend them. */
export function unfitForRing(zone: Zone, { branches }: { branches: readonly Branch[] }): CableModel[] {
  const own = new Set(cablesBeyond(zone, branches));
  const { leastCsaMm2, leastCapacityA } = ringLimits;
  return zone.cables.filter(
    (cable) =>
      own.has(cable.id) &&
      isCable(cable) &&
      ((cable.csaMm2 ?? leastCsaMm2) < leastCsaMm2 || (cable.ratingA ?? leastCapacityA) < leastCapacityA),
  );
}

/** Cables of some branches and all beyond them. */
export const cablesBeyond = (zone: Zone, branches: readonly Branch[]): CableId[] =>
  branches.flatMap(({ index, end }) =>
    zone.shape.branches.slice(index, end).flatMap(({ run }) => run.cables.map(({ id }) => id)),
  );

/** Where branches end: at the stations furthest out of each. */
export const farEnds = (zone: Zone, branches: readonly Branch[]): StationId[] =>
  branches.flatMap(({ index, end }) => {
    const own = zone.shape.branches.slice(index, end);
    const deepest = own.reduce((most, { depth }) => Math.max(most, depth), 0);
    return own.filter(({ depth }) => depth === deepest).map(({ far }) => far);
  });

/** The branch that leaves the ring or the way and that this one is part of. */
export const rootBranch = (zone: Zone, branch: Branch): Branch => {
  let at = branch;
  while (at.parent !== undefined) at = zone.shape.branches[at.parent] ?? at;
  return at;
};
