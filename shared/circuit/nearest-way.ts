import type { StationId } from "../board/ids.ts";
import type { CircuitModel } from "./model.ts";

/**
 * Which of some ways is the fewest cables away from a station that `isMeant`: where ways meet, the one that it most
 * likely hangs on. The first of the ways where no such station is joined to any.
 */
export function nearestWay(
  model: CircuitModel,
  ways: readonly StationId[],
  isMeant: (station: StationId) => boolean,
): StationId | undefined {
  const wayOf = new Map(ways.map((way) => [way, way]));
  // Grows while it is walked: from each way one cable further at a time.
  const queue = [...ways];
  for (const station of queue) {
    if (isMeant(station)) return wayOf.get(station);
    for (const { fromStation, toStation } of model.cables) {
      const next = fromStation === station ? toStation : toStation === station ? fromStation : undefined;
      const way = wayOf.get(station);
      if (next === undefined || way === undefined || wayOf.has(next)) continue;
      wayOf.set(next, way);
      queue.push(next);
    }
  }
  return ways[0];
}
