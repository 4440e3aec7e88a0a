import type { Place } from "../rule.ts";

/** The stations that a station, entry, contact, cable or conductor is at. */
const stationsOf = (id: string): string[] => id.split("~").map((end) => end.split(".")[0] ?? end);

/**
 * Where a learner is sent to look: each place once. A station, entry or contact is left out where a place before it
 * names its station already; the sentence on what is there tells the contacts. A cable is always named.
 */
export function placesToLookAt(places: readonly Place[]): Place[] {
  const named = new Set<string>();
  return places.filter(({ id }) => {
    const stations = stationsOf(id);
    const isNew = stations.length > 1 || !stations.every((station) => named.has(station));
    for (const station of stations) named.add(station);
    return isNew;
  });
}
