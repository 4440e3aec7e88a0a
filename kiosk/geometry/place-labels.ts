import { alongLine, lineLength } from "./cable-shape.ts";
import { isInside, overlaps, type Point, type Rect, rectRound } from "./point.ts";

/** A label on a cable: it is written where there is room, in the first of its forms that fits. */
export interface LabelWish {
  id: string;
  line: readonly Point[];
  forms: readonly { width: number; height: number }[];
  /** Where along the line it would like to be: the middle, or near one end. */
  near: "middle" | "start" | "end";
}

export interface Label extends Rect {
  id: string;
  /** Which of its forms is written. */
  form: number;
}

export interface LabelField {
  area: Rect;
  /** What no label may lie on: plates, other labels already set. */
  solid: readonly Rect[];
  /** Lines that a label had better not cover; its own is no matter. */
  lines: readonly { id: string; line: readonly Point[] }[];
  /** Half the width of a drawn line. */
  halfLinePx: number;
}

const stepPx = 7;

/** Distances along a line to try, best first. */
const spots = (whole: number, near: LabelWish["near"], clear: number): number[] => {
  const all: number[] = [];
  for (let far = 0; far <= whole; far += stepPx) all.push(far);
  const wanted = near === "middle" ? whole / 2 : near === "start" ? clear : whole - clear;
  return all.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
};

const linesUnder = (rect: Rect, own: string, { lines, halfLinePx }: LabelField): number => {
  let count = 0;
  for (const { id, line } of lines) {
    if (id === own) continue;
    for (let i = 1; i < line.length; i += 1) {
      const [a, b] = [line[i - 1], line[i]];
      if (!a || !b) continue;
      const part: Rect = {
        x: Math.min(a.x, b.x) - halfLinePx,
        y: Math.min(a.y, b.y) - halfLinePx,
        width: Math.abs(b.x - a.x) + 2 * halfLinePx,
        height: Math.abs(b.y - a.y) + 2 * halfLinePx,
      };
      if (overlaps(rect, part)) count += 1;
    }
  }
  return count;
};

const bestSpot = (wish: LabelWish, field: LabelField, set: readonly Rect[]): Label | undefined => {
  const whole = lineLength(wish.line);
  for (const [form, { width, height }] of wish.forms.entries()) {
    let best: Label | undefined;
    let least = Infinity;
    const tried = spots(whole, wish.near, height / 2 + 2);
    for (const [order, far] of tried.entries()) {
      const point = alongLine(wish.line, far);
      const aside = field.halfLinePx + 2 + (point.isLevel ? height : width) / 2;
      for (const off of [0, aside, -aside]) {
        const centre = point.isLevel ? { x: point.x, y: point.y + off } : { x: point.x + off, y: point.y };
        const rect = rectRound(centre, width, height);
        if (!isInside(rect, field.area)) continue;
        if (field.solid.some((other) => overlaps(rect, other, 1))) continue;
        if (set.some((other) => overlaps(rect, other, 2))) continue;
        const weight =
          order * (wish.near === "middle" ? 0.15 : 0.5) +
          linesUnder(rect, wish.id, field) * 4 +
          (off === 0 ? 0 : 5);
        if (weight >= least) continue;
        least = weight;
        best = { id: wish.id, form, ...rect };
      }
    }
    if (best) return best;
  }
  return undefined;
};

/**
 * Sets labels on cables so that none lies on another, on a plate or outside the area, in the order given. One for
 * which there is no room in any form is left out: what it says is also told when its cable is touched.
 */
export const placeLabels = (wishes: readonly LabelWish[], field: LabelField): Label[] => {
  const set: Label[] = [];
  for (const wish of wishes) {
    const label = bestSpot(wish, field, set);
    if (label) set.push(label);
  }
  return set;
};
