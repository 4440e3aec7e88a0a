import { type EntryId, stationOf } from "../../shared/board/ids.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import { holderOf } from "../notes/heaviest-at.ts";
import type { Place } from "../notes/weight.ts";

/**
 * An attempt with nothing but what some places are about, as a small picture beside a note has room for: their cables
 * with both ends, or where no cable is named the stations with what runs to them.
 */
export function attemptAbout(attempt: AttemptView, places: readonly Place[]): AttemptView {
  const holders = new Set(places.map(holderOf));
  const named = attempt.cables.filter(({ id }) => holders.has(id));
  const cables =
    named.length > 0
      ? named
      : attempt.cables.filter(({ from, to }) => holders.has(stationOf(from)) || holders.has(stationOf(to)));
  const ends = [...holders].filter((id) => id.includes("~")).flatMap((id) => id.split("~") as EntryId[]);
  const stations = new Set<string>([
    ...[...holders].filter((id) => !id.includes("~")),
    ...[...ends, ...cables.flatMap(({ from, to }) => [from, to])].map(stationOf),
  ]);
  const { scenario } = attempt;
  return {
    ...attempt,
    cables,
    scenario: {
      ...scenario,
      stations: scenario.stations.filter(({ id }) => stations.has(id)),
      plan: { ...scenario.plan, places: scenario.plan.places.filter(({ station }) => stations.has(station)) },
    },
  };
}
