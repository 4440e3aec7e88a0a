import type { Point } from "./point.ts";

/** Drops corners that lie on a straight line or twice on one spot. */
export const tidyLine = (line: readonly Point[]): Point[] => {
  const tidy: Point[] = [];
  for (const point of line) {
    const last = tidy.at(-1);
    if (last && last.x === point.x && last.y === point.y) continue;
    const before = tidy.at(-2);
    const isStraight =
      last &&
      before &&
      ((before.x === last.x && last.x === point.x) || (before.y === last.y && last.y === point.y));
    if (isStraight) tidy.pop();
    tidy.push(point);
  }
  return tidy;
};

/**
 * A line beside a line: moved by `offsetPx` to the right of its direction, for lines whose parts are level or
 * upright. Corners move with both parts that meet there, so that cores stay side by side round a bend.
 */
export const besideLine = (line: readonly Point[], offsetPx: number): Point[] =>
  line.map((point, i) => {
    const before = line[i - 1];
    const after = line[i + 1];
    const normal = { x: 0, y: 0 };
    for (const [a, b] of [
      [before, point],
      [point, after],
    ] as const) {
      if (!a || !b) continue;
      if (a.x === b.x) normal.x = -Math.sign(b.y - a.y);
      if (a.y === b.y) normal.y = Math.sign(b.x - a.x);
    }
    return { x: point.x + normal.x * offsetPx, y: point.y + normal.y * offsetPx };
  });

/** Math.hypot takes several times as long, and every label asks this at every point of its line. */
const distance = (a: Point, b: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return Math.sqrt(dx * dx + dy * dy);
};

const round = (n: number): number => Math.round(n * 10) / 10;
const at = ({ x, y }: Point): string => `${round(x)} ${round(y)}`;
const towards = (from: Point, to: Point, far: number): Point => {
  const whole = distance(from, to) || 1;
  return { x: from.x + ((to.x - from.x) * far) / whole, y: from.y + ((to.y - from.y) * far) / whole };
};

/** Right turn 1, left turn -1, straight 0. */
const turnAt = (a: Point, b: Point, c: Point): number =>
  Math.sign((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x));

/**
 * The SVG path of a line with round corners. A core that lies `offsetPx` to the right of its cable's middle turns
 * about the same centre, so its radius is smaller in a right bend and larger in a left one.
 */
export const roundPath = (line: readonly Point[], radiusPx: number, offsetPx = 0): string => {
  const [first] = line;
  if (!first) return "";
  let path = `M${at(first)}`;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b, c] = [line[i - 1], line[i], line[i + 1]];
    if (!a || !b) continue;
    if (!c) {
      path += `L${at(b)}`;
      continue;
    }
    const wanted = Math.max(1, radiusPx - offsetPx * turnAt(a, b, c));
    const half = Math.min(distance(a, b), distance(b, c)) / 2;
    const radius = Math.min(wanted, half);
    path += `L${at(towards(b, a, radius))}Q${at(b)} ${at(towards(b, c, radius))}`;
  }
  return path;
};

/** The point of a line `far` pixels from its start, and whether the line runs level there. */
export const alongLine = (line: readonly Point[], far: number): Point & { isLevel: boolean } => {
  let left = Math.max(0, far);
  let a = line[0] ?? { x: 0, y: 0 };
  let isLevel = true;
  for (let i = 1; i < line.length; i += 1) {
    const b = line[i] ?? a;
    isLevel = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
    const length = distance(a, b);
    if (left <= length) {
      const { x, y } = towards(a, b, left);
      return { x, y, isLevel };
    }
    left -= length;
    a = b;
  }
  return { x: a.x, y: a.y, isLevel };
};

export const lineLength = (line: readonly Point[]): number =>
  line.reduce((sum, b, i) => {
    const a = line[i - 1];
    return a ? sum + distance(a, b) : sum;
  }, 0);
