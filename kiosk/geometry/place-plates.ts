import { platesInRows } from "./plates-in-rows.ts";
import { isInside, overlaps, type Point, type Rect, rectRound } from "./point.ts";

export interface PlateWish {
  id: string;
  centre: Point;
  width: number;
  height: number;
}

export interface Plate extends Rect {
  id: string;
}

const clamp = (wanted: number, least: number, most: number): number =>
  Math.min(Math.max(wanted, least), Math.max(least, most));

const within = (rect: Rect, area: Rect): Rect => ({
  ...rect,
  x: clamp(rect.x, area.x, area.x + area.width - rect.width),
  y: clamp(rect.y, area.y, area.y + area.height - rect.height),
});

const relaxTurns = 40;

/** Pushes plates apart along the shorter way, both by half, and keeps them in the area. */
const pushApart = (plates: Plate[], area: Rect, gap: number): void => {
  for (let turn = 0; turn < relaxTurns; turn += 1) {
    let isApart = true;
    for (const [i, a] of plates.entries())
      for (const b of plates.slice(i + 1)) {
        if (!overlaps(a, b, gap)) continue;
        isApart = false;
        const dx = b.x + b.width / 2 - a.x - a.width / 2;
        const dy = b.y + b.height / 2 - a.y - a.height / 2;
        const overX = (a.width + b.width) / 2 + gap - Math.abs(dx);
        const overY = (a.height + b.height) / 2 + gap - Math.abs(dy);
        if (overX < overY) {
          const push = (overX / 2 + 0.01) * (dx < 0 ? -1 : 1);
          a.x -= push;
          b.x += push;
        } else {
          const push = (overY / 2 + 0.01) * (dy < 0 ? -1 : 1);
          a.y -= push;
          b.y += push;
        }
        Object.assign(a, within(a, area));
        Object.assign(b, within(b, area));
      }
    if (isApart) return;
  }
};

/** The nearest place to where it is wanted that is free of all plates already set down. */
const nearestFree = (plate: Plate, set: readonly Plate[], area: Rect, gap: number, step: number): Plate => {
  let best: Plate | undefined;
  let bestFar = Infinity;
  for (let y = area.y; y <= area.y + area.height - plate.height; y += step)
    for (let x = area.x; x <= area.x + area.width - plate.width; x += step) {
      const far = Math.hypot(x - plate.x, y - plate.y);
      const spot = { ...plate, x, y };
      if (far >= bestFar || set.some((other) => overlaps(spot, other, gap))) continue;
      best = spot;
      bestFar = far;
    }
  return best ?? plate;
};

/**
 * Where the plates of the stations go: as near to their places on the plan as they can without touching one
 * another, all inside the area, in pixels. In a crowded area the gap is given up before a plate overlaps another,
 * and then the places: they stand in rows, in all the room there is round the area.
 */
export const placePlates = (
  wishes: readonly PlateWish[],
  area: Rect,
  gapPx: number,
  outer: Rect = area,
): Plate[] => {
  const plates: Plate[] = wishes.map(({ id, centre, width, height }) => ({
    id,
    ...within(rectRound(centre, width, height), area),
  }));
  pushApart(plates, area, gapPx);
  const set = setDown(plates, area, gapPx);
  return hasOverlap(set) ? platesInRows(plates, outer) : set;
};

const hasOverlap = (plates: readonly Plate[]): boolean =>
  plates.some((a, i) => plates.slice(i + 1).some((b) => overlaps(a, b, 0)));

/** Sets plates down one after the other, each at the nearest free place to where it is wanted. */
const setDown = (plates: readonly Plate[], area: Rect, gapPx: number): Plate[] => {
  const set: Plate[] = [];
  for (const plate of plates) {
    const isFree = (gap: number) =>
      isInside(plate, area) && !set.some((other) => overlaps(plate, other, gap));
    if (isFree(gapPx * 0.9)) {
      set.push(plate);
      continue;
    }
    // The gap is given up in two steps before a plate would overlap another.
    const spots = [gapPx, gapPx / 2, 0].map((gap) => ({ gap, spot: nearestFree(plate, set, area, gap, 5) }));
    const found = spots.find(({ gap, spot }) => !set.some((other) => overlaps(spot, other, gap * 0.9)));
    set.push(found?.spot ?? plate);
  }
  return set;
};
