import type { StationId } from "../board/ids.ts";
import type { StationKind } from "../board/station-kinds.ts";
import { isCable } from "./is-cable.ts";
import type { Branch, CableModel, CircuitModel, Zone } from "./model.ts";

const kindOf = (model: CircuitModel, id: StationId): StationKind | undefined => model.stations.get(id)?.kind;

export const isLightingPoint = (model: CircuitModel, id: StationId): boolean => {
  const kind = kindOf(model, id);
  return kind === "luminaire" || kind === "ceiling-rose";
};

/** True where a socket outlet hangs straight on the zone, with no fuse of its own between. */
export const hasSocketOutlet = (model: CircuitModel, { points }: Zone): boolean =>
  points.some((id) => kindOf(model, id) === "socket-outlet");

/** True for a connection unit that feeds no point: a circuit is what it is without it. */
const isIdleUnit = (model: CircuitModel, id: StationId): boolean =>
  kindOf(model, id) === "fcu" && !model.fusedLinks.some(({ fcu, to }) => fcu === id && to.points.length > 0);

/**
 * True for a zone with a ring that the regulation for rings is about: one of socket outlets and connection units.
 * A ring of nothing but lights or fixed appliances is judged as any other circuit, by what its device protects.
 */
export const isRingCircuit = (model: CircuitModel, zone: Zone): boolean => {
  if (zone.isFused || zone.shape.rings.length === 0) return false;
  const points = zone.points.filter((id) => !isIdleUnit(model, id));
  const isOfRing = (id: StationId) => {
    const kind = kindOf(model, id);
    return kind === "socket-outlet" || kind === "fcu";
  };
  return points.length === 0 || points.some(isOfRing);
};

/** True for the unfused side of a circuit of socket outlets, ring or radial: there a small branch is a spur. */
export const hasSpurRules = (model: CircuitModel, zone: Zone): boolean =>
  isRingCircuit(model, zone) || (!zone.isFused && hasSocketOutlet(model, zone));

/** True for the unfused side of a way that feeds lights and no socket outlet. */
export const isLightingCircuit = (model: CircuitModel, zone: Zone): boolean =>
  !zone.isFused && !hasSocketOutlet(model, zone) && zone.points.some((id) => isLightingPoint(model, id));

/** The zones of the circuit an unfused zone is at the head of: itself and those behind fuses. */
export const zonesOfCircuit = (model: CircuitModel, head: Zone): Zone[] => [
  head,
  ...model.zones.filter((zone) => zone.isFused && zone.ways.some((way) => head.ways.includes(way))),
];

/** True where line or neutral runs in the cable; a single protective conductor carries no load. */
export const carriesLoad = (cable: CableModel): boolean =>
  isCable(cable) && cable.conductors.some((conductor) => conductor.class !== "earth");

/** Points at and beyond the far end of a branch. */
export const pointsBeyond = ({ shape }: Zone, { index, end }: Branch): StationId[] =>
  shape.branches.slice(index, end).flatMap(({ points }) => points);
