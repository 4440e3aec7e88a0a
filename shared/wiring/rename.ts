import {
  cableId,
  type CableId,
  contactId,
  type ContactId,
  endsOfCable,
  type EntryId,
  entryOf,
  roleOf,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import type { Requirement, Wiring } from "./wiring.schema.ts";

/** New names: of stations, and of entries with the station's new name in them. */
export interface Renaming {
  station: (id: StationId) => StationId;
  entry: (id: EntryId) => EntryId;
}

/** Gives every station a new name; entries keep their letters. */
export const renamingStations = (newName: (id: StationId) => StationId): Renaming => ({
  station: newName,
  entry: (id) => `${newName(stationOf(id))}${id.slice(id.indexOf("."))}` as EntryId,
});

function renameWant(want: Requirement, { station, entry }: Renaming): Requirement {
  const cable = (id: CableId): CableId => {
    const [a, b] = endsOfCable(id);
    return cableId(entry(a), entry(b));
  };
  switch (want.kind) {
    case "served":
    case "in-ring":
    case "unfused-spur":
    case "fuse":
      return { ...want, stations: want.stations.map(station) };
    case "one-circuit":
      return {
        ...want,
        stations: want.stations.map(station),
        ...(want.way ? { way: station(want.way) } : {}),
      };
    case "shape":
      return { ...want, of: station(want.of) };
    case "kept":
      return { ...want, cables: want.cables.map(cable) };
    case "through-fcu":
      return {
        ...want,
        stations: want.stations.map(station),
        ...(want.fcu ? { fcu: station(want.fcu) } : {}),
      };
    case "own-switch":
      return {
        ...want,
        stations: want.stations.map(station),
        ...(want.by ? { by: station(want.by) } : {}),
      };
    case "device":
    case "sized":
    case "readings":
      return { ...want, way: station(want.way) };
    case "thrift":
    case "fault-named":
      return want;
  }
}

/** The same wiring under other names, wherever an id stands in it. */
export function rename(wiring: Wiring, renaming: Renaming): Wiring {
  const { station, entry } = renaming;
  const contact = (id: ContactId): ContactId => contactId(entry(entryOf(id)), roleOf(id));
  return {
    ...wiring,
    stations: wiring.stations.map((one) => ({
      ...one,
      id: station(one.id),
      ...(one.entries
        ? {
            entries: one.entries.map((its) => {
              const renamed = entry(`${one.id}.${its.letter}` as EntryId);
              return { ...its, letter: renamed.slice(renamed.indexOf(".") + 1) };
            }),
          }
        : {}),
    })),
    cables: wiring.cables.map((cable) => ({ ...cable, from: entry(cable.from), to: entry(cable.to) })),
    ...(wiring.loads
      ? { loads: wiring.loads.map((load) => ({ ...load, station: station(load.station) })) }
      : {}),
    ...(wiring.unknown ? { unknown: wiring.unknown.map(contact) } : {}),
    ...(wiring.wants ? { wants: wiring.wants.map((want) => renameWant(want, renaming)) } : {}),
    ...(wiring.taskStations ? { taskStations: wiring.taskStations.map(station) } : {}),
    ...(wiring.readings
      ? {
          readings: wiring.readings.map((reading) => ({
            ...reading,
            way: station(reading.way),
            ...(reading.red ? { red: contact(reading.red) } : {}),
            ...(reading.black ? { black: contact(reading.black) } : {}),
          })),
        }
      : {}),
  };
}
