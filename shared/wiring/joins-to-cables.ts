import {
  byId,
  type CableId,
  cableOfConductor,
  conductorId,
  type ContactId,
  endsOfCable,
  endsOfConductor,
  entryOf,
  isFront,
  stationOf,
  type StationId,
} from "../board/ids.ts";

/** One cable as it is sensed: the conductors between one pair of entries, one or more. */
export interface JoinedCable {
  id: CableId;
  /** Each with its end at the cable's first entry first. */
  conductors: [ContactId, ContactId][];
}

/** How far two stations are apart on the plan; any unit, only compared. Undefined where no way is known. */
export type DistanceBetween = (a: StationId, b: StationId) => number | undefined;

/**
 * The cables that groups of joined contacts make: joins between one pair of entries are one cable. A group of two
 * is one conductor. A larger group is one node that nobody can see into: it makes the least tree by distance, so
 * that it is drawn as short as it can be; ties go by id. Test faces are no place for a cable and are left out.
 * Sorted, the same for the same joins.
 */
export function joinsToCables(
  groups: readonly (readonly ContactId[])[],
  distanceBetween: DistanceBetween,
): JoinedCable[] {
  const cables = new Map<CableId, JoinedCable>();
  const conductors = groups.flatMap((group) =>
    leastTree([...new Set(group)].filter((contact) => !isFront(contact)).sort(byId), distanceBetween),
  );
  for (const [a, b] of conductors.sort((one, other) => byId(conductorId(...one), conductorId(...other)))) {
    const id = cableOfConductor(conductorId(a, b));
    const cable = cables.get(id) ?? { id, conductors: [] };
    const [first, second] = endsOfConductor(conductorId(a, b));
    cable.conductors.push(entryOf(first) === endsOfCable(id)[0] ? [first, second] : [second, first]);
    cables.set(id, cable);
  }
  return [...cables.values()].sort((a, b) => byId(a.id, b.id));
}

/** Least spanning tree (Prim) of contacts that are sorted, quadratic in their number. */
function leastTree(
  [start, ...rest]: readonly ContactId[],
  distanceBetween: DistanceBetween,
): [ContactId, ContactId][] {
  if (start === undefined) return [];
  const apart = (a: ContactId, b: ContactId): number =>
    stationOf(a) === stationOf(b) ? 0 : (distanceBetween(stationOf(a), stationOf(b)) ?? Infinity);
  const nearest = new Map(rest.map((contact) => [contact, { to: start, far: apart(start, contact) }]));
  const tree: [ContactId, ContactId][] = [];
  while (nearest.size > 0) {
    let best: { contact: ContactId; to: ContactId; far: number } | undefined;
    for (const [contact, { to, far }] of nearest) if (!best || far < best.far) best = { contact, to, far };
    if (!best) break;
    tree.push([best.to, best.contact]);
    nearest.delete(best.contact);
    for (const [contact, closest] of nearest) {
      const far = apart(best.contact, contact);
      if (far < closest.far) nearest.set(contact, { to: best.contact, far });
    }
  }
  return tree;
}
