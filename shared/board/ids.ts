declare const kind: unique symbol;
type Id<Kind extends string> = string & { readonly [kind]: Kind };

/** `socket-3`: one accessory position of the board. */
export type StationId = Id<"station">;
/** `socket-3.b`: the set of contacts one cable end occupies. */
export type EntryId = Id<"entry">;
/** `socket-3.b.L`: one conductor position of an entry, or `socket-3.front.L`: its test face. */
export type ContactId = Id<"contact">;
/** `socket-1.a~socket-3.b`: the two entry ids of a cable, sorted. */
export type CableId = Id<"cable">;
/** `socket-1.a.L~socket-3.b.L`: the two contact ids of a conductor, sorted. */
export type ConductorId = Id<"conductor">;

/** Conductor positions an entry can have. `SL` is the switched line; the last three belong to two-way switches. */
export const roles = ["L", "N", "E", "SL", "common", "strap1", "strap2"] as const;
export type Role = (typeof roles)[number];

/** What a role is to the circuit: a live conductor, the neutral or the protective conductor. */
export const roleClasses = ["live", "neutral", "earth"] as const;
export type RoleClass = (typeof roleClasses)[number];

export const roleClass = (role: Role): RoleClass =>
  role === "N" ? "neutral" : role === "E" ? "earth" : "live";

/** The letter of a station's test face, where a cable's entry letter would stand. */
export const frontLetter = "front";

export const stationIdPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
export const entryIdPattern = /^[a-z][a-z0-9]*(-[a-z0-9]+)*\.[a-z][a-z0-9]*$/;
export const contactIdPattern =
  /^[a-z][a-z0-9]*(-[a-z0-9]+)*\.[a-z][a-z0-9]*\.(L|N|E|SL|common|strap1|strap2)$/;

export const stationId = (text: string): StationId => text as StationId;
export const entryId = (station: string, letter: string): EntryId => `${station}.${letter}` as EntryId;
export const contactId = (entry: string, role: Role): ContactId => `${entry}.${role}` as ContactId;
export const frontId = (station: string, role: Role): ContactId =>
  contactId(entryId(station, frontLetter), role);

/** The station of an entry or a contact. */
export const stationOf = (id: EntryId | ContactId): StationId => id.slice(0, id.indexOf(".")) as StationId;

/** The entry of a contact. */
export const entryOf = (id: ContactId): EntryId => id.slice(0, id.lastIndexOf(".")) as EntryId;

/** The role of a contact. */
export const roleOf = (id: ContactId): Role => id.slice(id.lastIndexOf(".") + 1) as Role;

/** True where a contact is a test face and not a place for a lead. */
export const isFront = (id: ContactId): boolean => entryOf(id).endsWith(`.${frontLetter}`);

/** Orders two ids by code unit, the same on every machine. */
export const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

export const cableId = (a: EntryId, b: EntryId): CableId => (a <= b ? `${a}~${b}` : `${b}~${a}`) as CableId;
export const conductorId = (a: ContactId, b: ContactId): ConductorId =>
  (a <= b ? `${a}~${b}` : `${b}~${a}`) as ConductorId;

/** The two entries of a cable, in the order of its id. */
export const endsOfCable = (id: CableId): [EntryId, EntryId] => id.split("~") as [EntryId, EntryId];

/** The two contacts of a conductor, in the order of its id. */
export const endsOfConductor = (id: ConductorId): [ContactId, ContactId] =>
  id.split("~") as [ContactId, ContactId];

/** The cable a conductor runs in. */
export const cableOfConductor = (id: ConductorId): CableId => {
  const [a, b] = endsOfConductor(id);
  return cableId(entryOf(a), entryOf(b));
};
