import { type StationId, stationOf } from "../board/ids.ts";
import type { Requirement } from "../wiring/wiring.schema.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";

/** The ways of a task, and every station that whole cables link with one of them, whatever lies inside the stations. */
export function linkedStations(
  { stations }: Pick<StrippedScenario, "stations">,
  { cables }: Pick<Built, "cables">,
): ReadonlySet<StationId> {
  const linked = new Set<StationId>(stations.filter(({ kind }) => kind === "way").map(({ id }) => id));
  const beside = new Map<StationId, StationId[]>();
  for (const { from, to } of cables)
    for (const [one, other] of [
      [stationOf(from), stationOf(to)],
      [stationOf(to), stationOf(from)],
    ] as const)
      beside.set(one, [...(beside.get(one) ?? []), other]);
  // A set is walked in the order in which it grows.
  for (const station of linked) for (const other of beside.get(station) ?? []) linked.add(other);
  return linked;
}

/** The stations that a requirement names, a switch and an FCU that it asks for among them. */
export const stationsAsked = (requirement: Requirement): StationId[] => [
  ...("stations" in requirement ? requirement.stations : []),
  ...("way" in requirement && requirement.way ? [requirement.way] : []),
  ...("of" in requirement ? [requirement.of] : []),
  ...("by" in requirement && requirement.by ? [requirement.by] : []),
  ...("fcu" in requirement && requirement.fcu ? [requirement.fcu] : []),
];
