import { type ContactId, entryOf, type Role, roleOf } from "../../shared/board/ids.ts";
import type { Core } from "../../shared/board/station-kinds.ts";
import type { BoardFace, SensedCable } from "../../shared/protocol/bench-view.ts";
import { contactsOf } from "../wiring/contacts-of.ts";

/** One core of a drawn cable: what it is at either end, and whether it is joined at all. */
export interface DrawnCore {
  core: Core;
  isThere: boolean;
  /** The colour of the contact it lands in at the cable's second end. */
  toCore?: Core;
  from?: ContactId;
  to?: ContactId;
  fromRole?: Role;
  toRole?: Role;
}

// As the cores lie in the sheath.
const order: readonly Core[] = ["brown", "black", "grey", "earth", "blue"];

/**
 * The cores of a sensed cable as they lie in its sheath, those that are missing among them. The colour of a core
 * is that of the contact it is in at the cable's first end: there a lead shows what it was taken for.
 */
export const coresOf = (cable: SensedCable, face: BoardFace): DrawnCore[] => {
  const at = contactsOf(cable.from, face);
  const ends = contactsOf(cable.to, face);
  const usual = at.length > 0 ? at : ends;
  const cores: DrawnCore[] = usual.map(({ core, id }) => {
    const joined = cable.conductors.find(({ from, to }) => from === id || to === id);
    if (!joined) return { core, isThere: false };
    const from = entryOf(joined.from) === cable.from ? joined.from : joined.to;
    const to = from === joined.from ? joined.to : joined.from;
    const toCore = ends.find((contact) => contact.id === to)?.core;
    return {
      core,
      isThere: true,
      ...(toCore ? { toCore } : {}),
      from,
      to,
      fromRole: roleOf(from),
      toRole: roleOf(to),
    };
  });
  return cores.toSorted((a, b) => order.indexOf(a.core) - order.indexOf(b.core));
};

/** True where a core lands on another role than it left. */
export const isCrossed = ({ fromRole, toRole }: DrawnCore): boolean =>
  fromRole !== undefined && toRole !== undefined && !isSamePath(fromRole, toRole);

// Straps and the switched line change their names from station to station without being crossed.
const isSamePath = (a: Role, b: Role): boolean => a === b || (isLive(a) && isLive(b));
const isLive = (role: Role): boolean => role !== "N" && role !== "E";
