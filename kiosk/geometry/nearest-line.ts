import { distanceToLine, type Point } from "./point.ts";

export interface Touchable {
  id: string;
  line: readonly Point[];
}

/**
 * Which of several thin lines a finger means: the nearest within reach. The clear path round a line is as wide as
 * the reach allows and ends half way to its neighbour, so that lines lying side by side can each be touched.
 */
export const nearestLine = (
  point: Point,
  lines: readonly Touchable[],
  reachPx: number,
): string | undefined => {
  let nearest: string | undefined;
  let least = reachPx;
  for (const { id, line } of lines) {
    const far = distanceToLine(point, line);
    if (far <= least && (far < least || nearest === undefined)) {
      least = far;
      nearest = id;
    }
  }
  return nearest;
};
