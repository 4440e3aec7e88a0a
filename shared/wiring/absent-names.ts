import { type ContactId, entryId, type EntryId, type StationId, stationOf } from "../board/ids.ts";
import { contactsAt, entriesOf } from "./buses.ts";
import { nearestName } from "../reading/nearest-name.ts";
import type { FieldProblem } from "../reading/problem.ts";
import type { Station } from "./wiring.schema.ts";

/** The stations of a file by id, for the checks that follow references to them. */
export type Stations = ReadonlyMap<StationId, Station>;

const listedCount = 40;

/** Names in a row for a sentence, the first 40 where there are more. */
export function listed(names: readonly string[]): string {
  if (names.length > listedCount)
    return `${names.slice(0, listedCount).join(", ")} and ${names.length - listedCount} more`;
  return names.length > 0 ? names.join(", ") : "none";
}

/** Complains where a station is not in the file, and offers the one most like it. */
export function absentStation(field: string, id: StationId, stations: Stations): FieldProblem[] {
  if (stations.has(id)) return [];
  const meant = nearestName(id, [...stations.keys()]);
  return [
    {
      field,
      message: `there is no station ${id}`,
      remedy: meant ? `Did you mean ${meant}?` : `Use one of: ${listed([...stations.keys()])}.`,
    },
  ];
}

/** Complains where a station is not in the file or is no way. */
export function absentWay(field: string, id: StationId, stations: Stations): FieldProblem[] {
  const station = stations.get(id);
  if (!station || station.kind === "way") return absentStation(field, id, stations);
  return [{ field, message: `${id} is not a way of the consumer unit`, remedy: "Name a way here." }];
}

/** Complains where a station is not in the file or has no fuse. */
export function absentFcu(field: string, id: StationId, stations: Stations): FieldProblem[] {
  const station = stations.get(id);
  if (!station || station.kind === "fcu") return absentStation(field, id, stations);
  return [{ field, message: `${id} is not a fused connection unit`, remedy: "Name an FCU here." }];
}

/** The contacts of an entry in core order; undefined where it is not there. */
export function entryContacts(entry: EntryId, stations: Stations): ContactId[] | undefined {
  const station = stations.get(stationOf(entry));
  const found = station && entriesOf(station).find(({ letter }) => entryId(station.id, letter) === entry);
  return station && found ? contactsAt(station, found.letter, found.side) : undefined;
}

/** Complains where an entry is not there, and lists the entries its station has. */
export function absentEntry(field: string, entry: EntryId, stations: Stations): FieldProblem[] {
  const station = stations.get(stationOf(entry));
  if (!station) return absentStation(field, stationOf(entry), stations);
  if (entryContacts(entry, stations)) return [];
  const there = entriesOf(station).map(({ letter, side }) => `${entryId(station.id, letter)} (${side})`);
  return [
    { field, message: `there is no entry ${entry}`, remedy: `Entries of ${station.id}: ${listed(there)}.` },
  ];
}
