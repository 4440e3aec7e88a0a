import { byId, type StationId } from "../board/ids.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { FusedLink, Meeting, Zone } from "./model.ts";

/**
 * Where the lines of two ways meet, by cable, by the contacts of an isolator or through a fuse: each group of zones
 * with all its ways, and the connection units that join them. What else is joined by fuses hangs on one way.
 */
export const meetingsOf = (zones: readonly Zone[], fusedLinks: readonly FusedLink[]): Meeting[] => {
  const sets = new DisjointSets(zones.length);
  for (const { from, to } of fusedLinks) sets.join(from.index, to.index);
  const groups = new Map<number, Zone[]>();
  for (const zone of zones) {
    const root = sets.find(zone.index);
    const known = groups.get(root);
    if (known) known.push(zone);
    else groups.set(root, [zone]);
  }
  return [...groups.values()].flatMap((group): Meeting[] => {
    const ways = [...new Set(group.flatMap((zone) => zone.ways))].sort(byId);
    if (ways.length < 2) return [];
    const among = new Set(group);
    const joining = fusedLinks.filter(({ from, to }) => among.has(from) && isJoining(from, to));
    return [{ ways, zones: group, units: [...new Set(joining.map(({ fcu }) => fcu))].sort(byId) }];
  });
};

/** True where a fuse lies between parts that do not hang on the same ways, or is one of several before a part. */
const isJoining = (from: Zone, to: Zone): boolean => {
  const has = (ways: readonly StationId[], way: StationId): boolean => ways.includes(way);
  return from.ways.some((way) => !has(to.ways, way)) || to.ways.some((way) => !has(from.ways, way));
};
