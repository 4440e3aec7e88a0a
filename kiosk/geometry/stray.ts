import { alongLine, lineLength } from "./cable-shape.ts";
import type { Point, Rect } from "./point.ts";

const stepPx = 10;

/** Points of a line so near together that what lies between two does not matter, its end among them. */
export const pointsAlong = (line: readonly Point[]): Point[] => {
  const whole = lineLength(line);
  const points: Point[] = [];
  for (let far = 0; far < whole; far += stepPx) points.push(alongLine(line, far));
  const last = line.at(-1);
  return last ? [...points, last] : points;
};

/** True where a rectangle holds a point. */
export const holds = ({ x, y, width, height }: Rect, point: Point): boolean =>
  point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height;

/**
 * How far a line strays from the route it stands for, in pixels: the least length of a leash with which one can walk
 * the line and the other the route, neither of them ever going back (the discrete Fréchet distance, T. Eiter and H.
 * Mannila, Computing discrete Fréchet distance, 1994). So it tells a short cut and a wrong order, not only what lies
 * far off. While both are in the same of the rectangles `round` they may be any way apart: there the line has to go
 * round a plate that the route passes under.
 */
export const strayPx = (line: readonly Point[], route: readonly Point[], round: readonly Rect[]): number => {
  const [walked, led] = [pointsAlong(line), pointsAlong(route)];
  const inside = led.map((point) => round.map((rect) => holds(rect, point)));
  let before: number[] = [];
  for (const [i, a] of walked.entries()) {
    const at = round.map((rect) => holds(rect, a));
    const leash: number[] = [];
    for (const [j, b] of led.entries()) {
      const isRound = at.some((isThere, k) => isThere && inside[j]?.[k]);
      const [dx, dy] = [a.x - b.x, a.y - b.y];
      const far = isRound ? 0 : Math.sqrt(dx * dx + dy * dy);
      const come =
        i === 0 && j === 0
          ? 0
          : Math.min(before[j] ?? Infinity, before[j - 1] ?? Infinity, leash[j - 1] ?? Infinity);
      leash.push(Math.max(far, come));
    }
    before = leash;
  }
  return before.at(-1) ?? 0;
};
