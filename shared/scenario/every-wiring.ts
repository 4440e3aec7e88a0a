import type { BoardDescription } from "../board/board.schema.ts";
import { cableId, type EntryId, entryId, type StationId, stationOf } from "../board/ids.ts";
import type { Side } from "../board/station-kinds.ts";
import { type Change, changed } from "./change.ts";
import { possibleChanges } from "./possible-changes.ts";
import type { Built, StrippedScenario } from "./scenario.schema.ts";

/**
 * Every wiring that a learner can come to from what is built, of whole cables and with every setting there is to
 * choose; what has to stay is left alone. Of two that differ in the entry on the same side of a station alone it gives
 * one: those are joined within the station. Undefined where there are more than so many.
 */
export function everyWiring(
  scenario: StrippedScenario,
  board: Pick<BoardDescription, "stations">,
  built: Built,
  mostCount: number,
): Built[] | undefined {
  const keyOf = wiringKeyOn(board);
  const kept = new Set(
    scenario.requirements.flatMap((requirement) => (requirement.kind === "kept" ? requirement.cables : [])),
  );
  const isAllowed = (change: Change): boolean => {
    if (change.kind === "set") return true;
    return !kept.has(change.kind === "plug" ? cableId(change.cable.from, change.cable.to) : change.cable);
  };
  const known = new Set([keyOf(built)]);
  const all = [built];
  // A list is walked in the order in which it grows.
  for (const one of all)
    for (const change of possibleChanges({ scenario, board, built: one }).filter(isAllowed)) {
      const next = changed(one, [change]);
      const key = keyOf(next);
      if (known.has(key)) continue;
      if (all.length === mostCount) return undefined;
      known.add(key);
      all.push(next);
    }
  return all;
}

function wiringKeyOn({ stations }: Pick<BoardDescription, "stations">): (built: Built) => string {
  const sides = new Map<EntryId, `${StationId}.${Side}`>(
    stations.flatMap(({ id, entries }) =>
      entries.map(({ letter, side }) => [entryId(id, letter), `${id}.${side}`] as const),
    ),
  );
  const sideOf = (entry: EntryId): string => sides.get(entry) ?? stationOf(entry);
  return ({ cables, settings = {} }) =>
    JSON.stringify([
      cables
        .map(({ from, to, ...cable }) =>
          JSON.stringify([
            // Cores on other routes say which end is which.
            cable.conductors ? [from, to] : [sideOf(from), sideOf(to)].toSorted(),
            cable,
          ]),
        )
        .toSorted(),
      Object.entries(settings)
        .map(([id, values]) => JSON.stringify([id, Object.entries(values).toSorted()]))
        .toSorted(),
    ]);
}
