import type { StationId } from "../board/ids.ts";
import { oncePerModel } from "./once-per-model.ts";

/**
 * Ways in whose circuits a short, a neutral joined to earth or any other crossed conductor stands. What flows there
 * is set by the fault: a figure that rests on a current means something only when it is mended.
 */
export const disturbedWays = oncePerModel((model): ReadonlySet<StationId> => {
  const ways = new Set<StationId>();
  for (const { cable, fromNode, toNode } of model.crossed) {
    for (const node of [fromNode, toNode]) for (const way of model.reachOf(node).sometimes) ways.add(way);
    for (const way of model.cableById.get(cable)?.circuits ?? []) ways.add(way);
  }
  return ways;
});
