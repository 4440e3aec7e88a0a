import {
  byId,
  type ConductorId,
  conductorId,
  type ContactId,
  endsOfConductor,
  type EntryId,
} from "../board/ids.ts";
import type { SensedState } from "../board/sensed-state.schema.ts";
import { DisjointSets } from "./disjoint-sets.ts";

/** What is plugged on the board, as the log keeps it: sorted, so that the same board is the same text. */
export interface Plugged {
  /** A pair of contacts is one; a larger group is its first contact with each of the others. */
  joins: ConductorId[];
  codes: { entry: EntryId; code: number }[];
  unknown: ContactId[];
}

/** How one state of the board differs from another. `codes` and `unknown` are whole where they differ. */
export interface PluggedChange {
  added: ConductorId[];
  removed: ConductorId[];
  codes?: Plugged["codes"] | undefined;
  unknown?: ContactId[] | undefined;
}

export const nothingPlugged: Plugged = { joins: [], codes: [], unknown: [] };

/** The joins, codes and unknown contacts of a sensed state. */
export function pluggedOf(state: Pick<SensedState, "groups" | "codes" | "unknown">): Plugged {
  const joins = state.groups.flatMap((group) => {
    const [first, ...rest] = group.toSorted(byId);
    return first === undefined ? [] : rest.map((contact) => conductorId(first, contact));
  });
  return {
    joins: joins.sort(byId),
    codes: state.codes.map(({ entry, code }) => ({ entry, code })).sort((a, b) => byId(a.entry, b.entry)),
    unknown: state.unknown.toSorted(byId),
  };
}

/** The groups that joins stand for: contacts that hang together, each group sorted, groups by their first. */
export function groupsOf(joins: readonly ConductorId[]): ContactId[][] {
  const ends = joins.map(endsOfConductor);
  const contacts = [...new Set(ends.flat())].sort(byId);
  const indexOf = new Map(contacts.map((contact, index) => [contact, index]));
  const sets = new DisjointSets(contacts.length);
  for (const [a, b] of ends) sets.join(indexOf.get(a) ?? 0, indexOf.get(b) ?? 0);
  // The lowest index stands for a group, so that groups come in the order of their first contacts.
  const groups = new Map<number, ContactId[]>();
  contacts.forEach((contact, index) => {
    const root = sets.find(index);
    const group = groups.get(root);
    if (group) group.push(contact);
    else groups.set(root, [contact]);
  });
  return [...groups.values()];
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What turns `before` into `after`, or undefined where they are the same. */
export function changeBetween(before: Plugged, after: Plugged): PluggedChange | undefined {
  const was = new Set(before.joins);
  const is = new Set(after.joins);
  const change: PluggedChange = {
    added: after.joins.filter((join) => !was.has(join)),
    removed: before.joins.filter((join) => !is.has(join)),
    ...(isSame(before.codes, after.codes) ? {} : { codes: after.codes }),
    ...(isSame(before.unknown, after.unknown) ? {} : { unknown: after.unknown }),
  };
  const isNothing = change.added.length + change.removed.length === 0 && !change.codes && !change.unknown;
  return isNothing ? undefined : change;
}

/** Contacts that hang together, those aside that cannot be read: what a bad line hides is no difference. */
function readable({ joins }: Plugged, unread: ReadonlySet<ContactId>): string {
  const groups = groupsOf(joins).map((group) => group.filter((contact) => !unread.has(contact)));
  return groups
    .filter(({ length }) => length > 1)
    .map((group) => group.join(" "))
    .sort(byId)
    .join("\n");
}

/** True where two states of the board are joined alike, as far as both can be read. */
export function isJoinedAlike(one: Plugged, other: Plugged): boolean {
  const unread = new Set([...one.unknown, ...other.unknown]);
  return readable(one, unread) === readable(other, unread);
}

/** The state after a change: the inverse of `changeBetween`. */
export function applyChange(before: Plugged, change: PluggedChange): Plugged {
  const gone = new Set(change.removed);
  return {
    joins: [...before.joins.filter((join) => !gone.has(join)), ...change.added].sort(byId),
    codes: change.codes ?? before.codes,
    unknown: change.unknown ?? before.unknown,
  };
}
