import { alongLine, lineLength } from "./cable-shape.ts";
import { isInside, overlaps, type Point, type Rect, rectRound } from "./point.ts";

/** A label on a cable: it is written where there is room, in the first of its forms that fits. */
export interface LabelWish {
  id: string;
  /** The line it belongs to, where that has another id. */
  own?: string;
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

const stepPx = 10;

/** Distances along a line to try, best first. */
const spots = (whole: number, near: LabelWish["near"], clear: number): number[] => {
  const all: number[] = [];
  for (let far = 0; far <= whole; far += stepPx) all.push(far);
  const wanted = near === "middle" ? whole / 2 : near === "start" ? clear : whole - clear;
  return all.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
};

interface Part extends Rect {
  id: string;
}

/** The straight parts of all lines as the strips they are drawn in. */
const partsOf = ({ lines, halfLinePx }: LabelField): Part[] =>
  lines.flatMap(({ id, line }) =>
    line.slice(1).map((b, i) => {
      const a = line[i] ?? b;
      return {
        id,
        x: Math.min(a.x, b.x) - halfLinePx,
        y: Math.min(a.y, b.y) - halfLinePx,
        width: Math.abs(a.x - b.x) + 2 * halfLinePx,
        height: Math.abs(a.y - b.y) + 2 * halfLinePx,
      };
    }),
  );

/** How many strips of other lines a label would cover; stops counting where it is too many anyway. */
const linesUnder = (rect: Rect, own: string, parts: readonly Part[], tooMany: number): number => {
  let count = 0;
  for (const part of parts) {
    if (part.id === own || !overlaps(rect, part)) continue;
    count += 1;
    if (count >= tooMany) break;
  }
  return count;
};

const bestSpot = (
  wish: LabelWish,
  field: LabelField,
  parts: readonly Part[],
  set: readonly Rect[],
): Label | undefined => {
  const whole = lineLength(wish.line);
  for (const [form, { width, height }] of wish.forms.entries()) {
    let best: Label | undefined;
    let least = Infinity;
    const tried = spots(whole, wish.near, height / 2 + 2);
    for (const [order, far] of tried.entries()) {
      const nearness = order * (wish.near === "middle" ? 0.15 : 0.5);
      // Spots come best first: none further off can do better than this one.
      if (nearness >= least) break;
      const point = alongLine(wish.line, far);
      const aside = field.halfLinePx + 2 + (point.isLevel ? height : width) / 2;
      for (const off of [0, aside, -aside]) {
        const weight = nearness + (off === 0 ? 0 : 5);
        if (weight >= least) continue;
        const centre = point.isLevel ? { x: point.x, y: point.y + off } : { x: point.x + off, y: point.y };
        const rect = rectRound(centre, width, height);
        if (!isInside(rect, field.area)) continue;
        if (field.solid.some((other) => overlaps(rect, other, 1))) continue;
        if (set.some((other) => overlaps(rect, other, 2))) continue;
        const whole = weight + linesUnder(rect, wish.own ?? wish.id, parts, (least - weight) / 4) * 4;
        if (whole >= least) continue;
        least = whole;
        best = { id: wish.id, form, ...rect };
      }
    }
    if (best) return best;
  }
  return undefined;
};

const setAll = (wishes: readonly LabelWish[], field: LabelField, still: ReadonlyMap<string, Label>) => {
  const parts = partsOf(field);
  const set: Label[] = wishes.flatMap(({ id }) => still.get(id) ?? []);
  let isWhole = true;
  for (const wish of wishes) {
    if (still.has(wish.id)) continue;
    const label = bestSpot(wish, field, parts, set);
    if (label) set.push(label);
    else isWhole = false;
  }
  return { set, isWhole };
};

/**
 * Sets labels on cables so that none lies on another, on a plate or outside the area, in the order given. One for
 * which there is no room in any form is left out: what it says is also told when its cable is touched. Labels in
 * `still` stay where they are as long as every other finds a place beside them.
 */
export const placeLabels = (
  wishes: readonly LabelWish[],
  field: LabelField,
  still: ReadonlyMap<string, Label> = new Map(),
): Label[] => {
  const beside = setAll(wishes, field, still);
  return beside.isWhole || still.size === 0 ? beside.set : setAll(wishes, field, new Map()).set;
};
