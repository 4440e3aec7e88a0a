import {
  byId,
  type CableId,
  cableId,
  type ContactId,
  entryOf,
  type Role,
  roleOf,
  type StationId,
} from "../board/ids.ts";
import type { CableSpec, Station } from "../wiring/wiring.schema.ts";
import { conductorsOf, stationsById } from "./conductors-of.ts";

/** How far two contacts are apart on the plan; any unit, only compared. */
export type DistanceBetween = (a: ContactId, b: ContactId) => number;

/**
 * The cables of a sensed board: joins between one pair of entries are one cable, with its cores stated one by one.
 * A group of two is one core. A larger group is one node that nobody can see into: it makes the least tree by
 * distance, so that it is drawn as short as it can be; ties go by id. Sorted, the same for the same joins.
 */
export const joinsToCables = (
  groups: readonly (readonly ContactId[])[],
  distanceBetween: DistanceBetween,
): CableSpec[] => {
  const cores = new Map<CableId, [Role, Role][]>();
  for (const group of groups)
    for (const [a, b] of coresOfGroup(group, distanceBetween)) {
      const [from, to] = isInOrder(a, b) ? [a, b] : [b, a];
      const id = cableId(entryOf(from), entryOf(to));
      const known = cores.get(id);
      const core: [Role, Role] = [roleOf(from), roleOf(to)];
      if (known) known.push(core);
      else cores.set(id, [core]);
    }
  return [...cores]
    .sort(([a], [b]) => byId(a, b))
    .map(([id, conductors]) => {
      const [from, to] = id.split("~") as [CableSpec["from"], CableSpec["to"]];
      return { from, to, conductors: conductors.sort((x, y) => byId(x.join(), y.join())) };
    });
};

const isInOrder = (a: ContactId, b: ContactId): boolean => {
  const byEntry = byId(entryOf(a), entryOf(b));
  return byEntry < 0 || (byEntry === 0 && a <= b);
};

function coresOfGroup(
  group: readonly ContactId[],
  distanceBetween: DistanceBetween,
): [ContactId, ContactId][] {
  const contacts = [...new Set(group)].sort(byId);
  const [first, second] = contacts;
  if (first === undefined || second === undefined) return [];
  if (contacts.length === 2) return [[first, second]];
  return leastTree(contacts, distanceBetween);
}

/** Least spanning tree (Prim), quadratic in the size of the group. */
function leastTree(
  contacts: readonly ContactId[],
  distanceBetween: DistanceBetween,
): [ContactId, ContactId][] {
  const [start, ...rest] = contacts as [ContactId, ...ContactId[]];
  const nearest = new Map(
    rest.map((contact) => [contact, { to: start, far: distanceBetween(start, contact) }]),
  );
  const tree: [ContactId, ContactId][] = [];
  while (nearest.size > 0) {
    let best: { contact: ContactId; to: ContactId; far: number } | undefined;
    for (const [contact, { to, far }] of nearest) if (!best || far < best.far) best = { contact, to, far };
    if (!best) break;
    tree.push([best.to, best.contact]);
    nearest.delete(best.contact);
    for (const [contact, known] of nearest) {
      const far = distanceBetween(best.contact, contact);
      if (far < known.far) nearest.set(contact, { to: best.contact, far });
    }
  }
  return tree;
}

/** The joins a wiring makes on a board: groups of contacts that are one through leads alone, each sorted. */
export const cablesToJoins = (cables: readonly CableSpec[], stations: readonly Station[]): ContactId[][] => {
  const known: ReadonlyMap<StationId, Station> = stationsById(stations);
  const groupOf = new Map<ContactId, Set<ContactId>>();
  for (const cable of cables)
    for (const { from, to } of conductorsOf(cable, known)) {
      const [a, b] = [groupOf.get(from) ?? new Set([from]), groupOf.get(to) ?? new Set([to])];
      const [small, large] = a.size < b.size ? [a, b] : [b, a];
      for (const contact of small) large.add(contact);
      for (const contact of large === a ? b : a) groupOf.set(contact, large);
      groupOf.set(from, large);
      groupOf.set(to, large);
    }
  return [...new Set(groupOf.values())]
    .map((group) => [...group].sort(byId))
    .sort(([a = ""], [b = ""]) => byId(a, b));
};
