import { byId, entryId, type EntryId, type Role, roleOf, type StationId, stationOf } from "../board/ids.ts";
import { entriesOf } from "./buses.ts";
import { conductorsOf, stationsById } from "./conductors-of.ts";
import { rename, renamingStations } from "./rename.ts";
import type { CableSpec, Station, Wiring } from "./wiring.schema.ts";

/** The same wiring with other names for all stations, in the opposite order. No verdict may change by it. */
export function withOtherNames(wiring: Wiring): Wiring {
  const ids = wiring.stations.map(({ id }) => id).toSorted(byId);
  const digits = String(ids.length).length;
  const names = new Map(
    ids.map((id, index) => [id, `place-${String(ids.length - index).padStart(digits, "0")}` as StationId]),
  );
  return rename(
    wiring,
    renamingStations((id) => names.get(id) ?? id),
  );
}

/** For each entry the one at the other end of its side's row: a, b, c become c, b, a. */
function mirrored(station: Station): [EntryId, EntryId][] {
  const entries = entriesOf(station);
  return entries.map(({ letter, side }): [EntryId, EntryId] => {
    const row = entries.filter((one) => one.side === side).map((one) => one.letter);
    const other = row[row.length - 1 - row.indexOf(letter)] ?? letter;
    return [entryId(station.id, letter), entryId(station.id, other)];
  });
}

const turned = ({ from, to, conductors, ...cable }: CableSpec): CableSpec => ({
  ...cable,
  from: to,
  to: from,
  ...(conductors ? { conductors: conductors.map(([a, b]): (typeof conductors)[number] => [b, a]) } : {}),
});

/**
 * The same wiring walked the other way: every cable written from its other end, the last first, and the entries
 * of every station mirrored within their side, so that a ring leaves where it came back. No verdict may change.
 */
export function walkedTheOtherWay(wiring: Wiring): Wiring {
  const entries = new Map(wiring.stations.flatMap(mirrored));
  const stations = wiring.stations.map((station) => ({ ...station, entries: [...entriesOf(station)] }));
  const renamed = rename(
    { ...wiring, stations },
    {
      station: (id) => id,
      entry: (id) => entries.get(id) ?? (`${stationOf(id)}${id.slice(id.indexOf("."))}` as EntryId),
    },
  );
  return {
    ...renamed,
    stations: renamed.stations.toReversed(),
    cables: renamed.cables.map(turned).toReversed(),
  };
}

/** The same wiring with every core of every cable stated, as a board senses it. No verdict may change by it. */
export function withCoresStated(wiring: Wiring): Wiring {
  const stations = stationsById(wiring.stations);
  return {
    ...wiring,
    cables: wiring.cables.map((cable) => ({
      ...cable,
      conductors: conductorsOf(cable, stations).map(({ from, to }): [Role, Role] => [
        roleOf(from),
        roleOf(to),
      ]),
    })),
  };
}
