import { type Grid, xOf, yOf } from "./lane-grid.ts";
import { distanceToSegment, type Point } from "./point.ts";

/** What following a guide costs: worked out once for a guide on lanes of one field. */
export interface GuideCosts {
  /** How many straight legs the guide has. */
  legCount: number;
  /** What a crossing of lanes costs off each leg, leg by leg. */
  off: Float32Array;
  /** What it costs to go over from each leg to the next at a crossing: dear away from the corner between them. */
  over: Float32Array;
}

// In steps of one lane, for each lane that a crossing lies off.
const cost = { offLeg: 3, mostLanesOff: 20, offCorner: 12, freeLanesOffCorner: 1 };

/**
 * The costs of a guide on a grid. A way walks its legs one after the other, so it goes round what the guide goes
 * round: were it only to keep near some part of the guide, every loop of it would be cut short.
 */
export const guideCosts = (grid: Grid, guide: readonly Point[]): GuideCosts => {
  const nodeCount = grid.taken.length;
  const legCount = Math.max(1, guide.length - 1);
  const pitch = Math.min(grid.pitchX, grid.pitchY);
  const off = new Float32Array(legCount * nodeCount);
  const over = new Float32Array(legCount * nodeCount);
  for (let leg = 0; leg < legCount; leg += 1) {
    const [a, b] = [guide[leg], guide[leg + 1]];
    if (!a || !b) continue;
    for (let node = 0; node < nodeCount; node += 1) {
      const point = { x: xOf(grid, node), y: yOf(grid, node) };
      const lanesOff = distanceToSegment(point, a, b) / pitch;
      const lanesToCorner = distanceToSegment(point, b, b) / pitch;
      off[leg * nodeCount + node] = Math.min(cost.mostLanesOff, lanesOff) * cost.offLeg;
      over[leg * nodeCount + node] = Math.max(0, lanesToCorner - cost.freeLanesOffCorner) * cost.offCorner;
    }
  }
  return { legCount, off, over };
};
