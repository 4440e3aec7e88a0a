import type { BoardDescription } from "../board/board.schema.ts";
import type { StationId } from "../board/ids.ts";
import type { Side, StationKind } from "../board/station-kinds.ts";
import type { StrippedScenario } from "./scenario.schema.ts";
import { scenarioEntries } from "./scenario-entries.ts";

/** One thing a scenario needs that a board does not have. */
export type Lacking =
  | { kind: "station"; station: StationId; stationKind: StationKind }
  | { kind: "other-kind"; station: StationId; stationKind: StationKind; boardKind: StationKind }
  | { kind: "entry"; station: StationId; letter: string; side: Side }
  | { kind: "setting"; station: StationId; key: string; wanted: unknown; fixed: unknown };

/**
 * What a board lacks for a scenario, station by station: a station, its kind, an entry of the right side under
 * its letter, or a setting that is fixed otherwise on the board. Nothing lacking: the board fits.
 */
export function lacking(
  scenario: Pick<StrippedScenario, "stations">,
  board: Pick<BoardDescription, "stations">,
): Lacking[] {
  const onBoard = new Map(board.stations.map((station) => [station.id, station]));
  return scenario.stations.flatMap((wanted): Lacking[] => {
    const found = onBoard.get(wanted.id);
    const { id: station, kind: stationKind } = wanted;
    if (!found) return [{ kind: "station", station, stationKind }];
    if (found.kind !== stationKind)
      return [{ kind: "other-kind", station, stationKind, boardKind: found.kind }];
    const entries = scenarioEntries(wanted)
      .filter(({ letter, side }) => !found.entries.some((e) => e.letter === letter && e.side === side))
      .map((entry): Lacking => ({ kind: "entry", station, ...entry }));
    const fixed = new Map<string, unknown>(Object.entries(found.settings ?? {}));
    const settings = Object.entries(wanted.settings ?? {})
      .filter(([key, value]) => fixed.has(key) && fixed.get(key) !== value)
      .map(([key, value]): Lacking => ({
        kind: "setting",
        station,
        key,
        wanted: value,
        fixed: fixed.get(key),
      }));
    return [...entries, ...settings];
  });
}

/** True where a board has all that a scenario needs. */
export const fitsBoard = (
  scenario: Pick<StrippedScenario, "stations">,
  board: Pick<BoardDescription, "stations">,
): boolean => lacking(scenario, board).length === 0;
