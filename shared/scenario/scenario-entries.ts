import { usualEntries } from "../board/station-kinds.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { StrippedScenario } from "./scenario.schema.ts";

/** The entries a scenario asks a board to have at a station: of each side the first usual letters of its kind. */
export function scenarioEntries(
  station: Pick<StrippedScenario["stations"][number], "kind" | "entries">,
): NonNullable<Station["entries"]> {
  const left = new Map(Object.entries(station.entries));
  return usualEntries[station.kind].filter(({ side }) => {
    const count = left.get(side) ?? 0;
    left.set(side, count - 1);
    return count > 0;
  });
}
