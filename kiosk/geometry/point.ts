export interface Point {
  x: number;
  y: number;
}

export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** True where two rectangles come nearer than `gap` to each other. */
export const overlaps = (a: Rect, b: Rect, gap = 0): boolean =>
  a.x < b.x + b.width + gap &&
  b.x < a.x + a.width + gap &&
  a.y < b.y + b.height + gap &&
  b.y < a.y + a.height + gap;

export const isInside = (inner: Rect, outer: Rect): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;

/** A rectangle of a size round a point. */
export const rectRound = (centre: Point, width: number, height: number): Rect => ({
  x: centre.x - width / 2,
  y: centre.y - height / 2,
  width,
  height,
});

export const centreOf = (rect: Rect): Point => ({
  x: rect.x + rect.width / 2,
  y: rect.y + rect.height / 2,
});

/** Distance from a point to the straight line between two others, ends included. */
export const distanceToSegment = (point: Point, a: Point, b: Point): number => {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lengthSquared = dx * dx + dy * dy;
  const along = lengthSquared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / lengthSquared;
  const t = Math.min(1, Math.max(0, along));
  const x = point.x - a.x - t * dx;
  const y = point.y - a.y - t * dy;
  // Math.hypot is several times as slow, and this is asked for every lane of every plan.
  return Math.sqrt(x * x + y * y);
};

/** Distance from a point to a line of many corners. */
export const distanceToLine = (point: Point, line: readonly Point[]): number => {
  let least = Infinity;
  for (let i = 1; i < line.length; i += 1) {
    const [a, b] = [line[i - 1], line[i]];
    if (a && b) least = Math.min(least, distanceToSegment(point, a, b));
  }
  return least;
};

/** Distance from a point to a rectangle; 0 inside. */
export const distanceToRect = (point: Point, rect: Rect): number =>
  Math.hypot(
    Math.max(rect.x - point.x, 0, point.x - rect.x - rect.width),
    Math.max(rect.y - point.y, 0, point.y - rect.y - rect.height),
  );
