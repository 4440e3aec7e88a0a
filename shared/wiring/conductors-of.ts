import {
  type ContactId,
  contactId,
  type EntryId,
  type Role,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import { pairByCore } from "../board/pair-by-core.ts";
import { type CoreRole, coreRoles, type Side } from "../board/station-kinds.ts";
import { entriesOf } from "./buses.ts";
import type { CableSpec, Station } from "../wiring/wiring.schema.ts";

/** One core from a contact at the `from` end to a contact at the `to` end. */
export interface CorePair {
  from: ContactId;
  to: ContactId;
}

/** Looks up the stations of a wiring by id. */
export const stationsById = (stations: readonly Station[]): ReadonlyMap<StationId, Station> =>
  new Map(stations.map((station) => [station.id, station]));

/** The side of an entry, or undefined where its station has no such entry. */
export const sideOfEntry = (entry: EntryId, stations: ReadonlyMap<StationId, Station>): Side | undefined => {
  const station = stations.get(stationOf(entry));
  if (!station) return undefined;
  const letter = entry.slice(station.id.length + 1);
  return entriesOf(station).find((candidate) => candidate.letter === letter)?.side;
};

/** The core places of an entry; none where there is no such entry. */
export const coreRolesOf = (entry: EntryId, stations: ReadonlyMap<StationId, Station>): CoreRole[] => {
  const station = stations.get(stationOf(entry));
  const side = sideOfEntry(entry, stations);
  if (!station || !side) return [];
  return coreRoles(station.kind, side, station.settings?.switching) ?? [];
};

/** The cores of a cable between two entries if each ran straight: brown to brown, blue to blue, earth to earth. */
export const straightCores = (
  from: EntryId,
  to: EntryId,
  stations: ReadonlyMap<StationId, Station>,
): CorePair[] =>
  pairByCore(coreRolesOf(from, stations), coreRolesOf(to, stations)).map(([near, far]) => ({
    from: contactId(from, near.role),
    to: contactId(to, far.role),
  }));

/** The cores a cable has: those it states, or every core straight where it states none. */
export const conductorsOf = (
  cable: Pick<CableSpec, "from" | "to" | "conductors">,
  stations: ReadonlyMap<StationId, Station>,
): CorePair[] =>
  cable.conductors
    ? cable.conductors.map(([a, b]: [Role, Role]) => ({
        from: contactId(cable.from, a),
        to: contactId(cable.to, b),
      }))
    : straightCores(cable.from, cable.to, stations);
