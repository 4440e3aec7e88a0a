import type { StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { equalParts } from "./equal-parts.ts";
import { statedCurrentA } from "./electrical-model.ts";
import { zoneTreeOf } from "./zone-tree.ts";

/**
 * A load case of the voltage drop: some points of one zone that have their turn one after the other, each at its most,
 * while the rest of In is shared out among the other points of the circuit.
 */
export interface TurnCase {
  zone: Zone;
  takers: ReadonlySet<StationId>;
  /** What each point draws while another of the takers has its turn, in amperes. */
  drawsA: ReadonlyMap<StationId, number>;
  /** Drawn at the head of the zone, where that is behind a fuse; 0 elsewhere. */
  headA: number;
  /** What a taker rises by when it has its turn. */
  riseA: number;
}

/** The most a zone may carry: the least of its fuse and all devices before it. Undefined while one is not known. */
export function zoneRatingA(model: CircuitModel, zone: Zone): number | undefined {
  const { ratingA } = zone.upstream;
  const parent = zoneTreeOf(model).parentOf(zone);
  if (ratingA === undefined || !parent) return ratingA;
  const beforeA = zoneRatingA(model, parent.zone);
  return beforeA === undefined ? undefined : Math.min(ratingA, beforeA);
}

/**
 * The points of a circuit that have a turn, by zone: its socket outlets; where it has none, what may draw anything for
 * nobody has stated it, an appliance or a connection unit with nothing behind it.
 */
export function takersOf(model: CircuitModel, zones: readonly Zone[]): Map<Zone, StationId[]> {
  const pick = (isTaker: (id: StationId) => boolean): Map<Zone, StationId[]> =>
    new Map(
      zones
        .map((zone) => [zone, zone.points.filter(isTaker)] as const)
        .filter(([, points]) => points.length > 0),
    );
  const outlets = pick((id) => model.stations.get(id)?.kind === "socket-outlet");
  return outlets.size > 0 ? outlets : pick((id) => isUnstated(model, id));
}

function isUnstated(model: CircuitModel, id: StationId): boolean {
  if (statedCurrentA(model, id) !== undefined) return false;
  return model.stations.get(id)?.kind !== "fcu" || !zoneTreeOf(model).childOf(id)?.points.length;
}

/**
 * The load cases of a circuit without regard to what is stated at its socket outlets: each socket outlet in turn at
 * 20 A (On-Site Guide Appendix H), never more than the least fuse or device before it, and the rest of In in equal parts
 * over the other points straight on the circuit, a connection unit as one point at most its fuse, lamps and appliances at
 * most their load. A stated load never makes a case lighter at a socket outlet. `isCounted`: line and neutral are there.
 */
export function turnCases(
  model: CircuitModel,
  zones: readonly Zone[],
  isCounted: (id: StationId) => boolean,
): TurnCase[] {
  return [...takersOf(model, zones)].flatMap(([zone, points]) => {
    const takers = points.filter(isCounted);
    const isAlike = takers.every((id) => model.stations.get(id)?.kind === "socket-outlet");
    const groups = isAlike ? [takers] : takers.map((id) => [id]);
    return groups.flatMap((group) => turnCase(model, zone, group, isCounted) ?? []);
  });
}

function turnCase(
  model: CircuitModel,
  zone: Zone,
  takers: readonly StationId[],
  isCounted: (id: StationId) => boolean,
): TurnCase | undefined {
  const [taker, another] = takers;
  const { root, via } = rootOf(model, zone);
  const [zoneA, rootA] = [zoneRatingA(model, zone), zoneRatingA(model, root)];
  if (taker === undefined || zoneA === undefined || rootA === undefined) return undefined;
  const turnA = Math.min(mostA(model, taker), zoneA);
  const others = root.points.filter((id) => id !== (via ?? taker) && isCounted(id));
  const drawsA = new Map<StationId, number>();
  shareOut(model, others, Math.max(0, rootA - turnA), isCounted, drawsA);
  if (via !== undefined) return { zone, takers: new Set(takers), drawsA, headA: turnA, riseA: turnA };
  const spreadA = (another === undefined ? undefined : drawsA.get(another)) ?? 0;
  drawsA.set(taker, spreadA);
  return { zone, takers: new Set(takers), drawsA, headA: 0, riseA: turnA - spreadA };
}

/** The zone on the way's device that another hangs on, and by which connection unit there. */
function rootOf(model: CircuitModel, zone: Zone): { root: Zone; via?: StationId } {
  let at: { root: Zone; via?: StationId } = { root: zone };
  for (let depth = zoneTreeOf(model).depthOf(zone) ?? 0; depth > 0; depth--) {
    const parent = zoneTreeOf(model).parentOf(at.root);
    if (parent) at = { root: parent.zone, via: parent.fcu };
  }
  return at;
}

/** The most a point may be taken to draw; an appliance of which nothing is stated may draw anything. */
function mostA(model: CircuitModel, id: StationId): number {
  const station = model.stations.get(id);
  if (station?.kind === "socket-outlet") return ringLimits.designFarEndA;
  if (station?.kind === "fcu") return station.settings?.fuseRatingA ?? Infinity;
  return statedCurrentA(model, id) ?? Infinity;
}

/** What comes through a connection unit is drawn behind it, as far as what is there can take it. */
function shareOut(
  model: CircuitModel,
  points: readonly StationId[],
  totalA: number,
  isCounted: (id: StationId) => boolean,
  drawsA: Map<StationId, number>,
): void {
  const parts = equalParts(
    totalA,
    points.map((id) => mostA(model, id)),
  );
  points.forEach((id, index) => {
    const partA = parts[index] ?? 0;
    const behind = (zoneTreeOf(model).childOf(id)?.points ?? []).filter(isCounted);
    const takenA = equalParts(
      partA,
      behind.map((each) => mostA(model, each)),
    ).reduce((sum, each) => sum + each, 0);
    drawsA.set(id, partA - takenA);
    if (behind.length > 0) shareOut(model, behind, takenA, isCounted, drawsA);
  });
}
