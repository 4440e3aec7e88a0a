import type { Point, Rect } from "./point.ts";

const stepPx = 10;

/** Points of a line so near together that what lies between two does not matter, its end among them. */
export const pointsAlong = (line: readonly Point[]): Point[] => {
  const points: Point[] = [];
  // What is left of a step where the last part ended.
  let left = 0;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const whole = Math.sqrt(dx * dx + dy * dy);
    let far = left;
    for (; far < whole; far += stepPx)
      points.push({ x: a.x + (dx * far) / whole, y: a.y + (dy * far) / whole });
    left = far - whole;
  }
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
 * round a plate that the route passes under. Where it strays further than `mostPx` it is Infinity, and found sooner.
 */
export const strayPx = (
  line: readonly Point[],
  route: readonly Point[],
  round: readonly Rect[],
  mostPx = Infinity,
): number => {
  const led = pointsAlong(route);
  const most = mostPx * mostPx;
  const inside = round.map((rect) => led.map((point) => holds(rect, point)));
  // Row by row of the points of the line: the least leash, squared, with which both got to here.
  let before = new Float64Array(led.length);
  let leash = new Float64Array(led.length);
  for (const [i, a] of pointsAlong(line).entries()) {
    const both = inside.filter((_, k) => round[k] && holds(round[k], a));
    let isReached = false;
    for (let j = 0; j < led.length; j += 1) {
      const along = j === 0 ? Infinity : (leash[j - 1] ?? 0);
      const come =
        i === 0 ? (j === 0 ? 0 : along) : Math.min(before[j] ?? 0, before[j - 1] ?? Infinity, along);
      const b = led[j];
      if (come > most || !b) {
        leash[j] = Infinity;
        continue;
      }
      const [dx, dy] = [a.x - b.x, a.y - b.y];
      const far = dx * dx + dy * dy;
      const held = Math.max(come, far > come && isHeld(both, j) ? 0 : far);
      leash[j] = held;
      isReached ||= held <= most;
    }
    if (!isReached) return Infinity;
    [before, leash] = [leash, before];
  }
  const last = before.at(-1) ?? 0;
  return last > most ? Infinity : Math.sqrt(last);
};

const isHeld = (inside: readonly (readonly boolean[])[], at: number): boolean => {
  for (const isThere of inside) if (isThere[at]) return true;
  return false;
};
