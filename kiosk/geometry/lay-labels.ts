import { alongLine, lineLength } from "./cable-shape.ts";
import { isInside, overlaps, type Point, type Rect, rectRound } from "./point.ts";

export interface LabelForm {
  width: number;
  height: number;
  /** Written only along a level part of its line that is as long as it is. */
  isAlong?: boolean;
}

/** A label on a cable: it is written where there is room, in the first of its forms that fits. */
export interface LabelWish {
  id: string;
  /** The line it belongs to, where that has another id. */
  own?: string;
  line: readonly Point[];
  forms: readonly LabelForm[];
  /** Where along the line it would like to be: the middle, or near one end. */
  near: "middle" | "start" | "end";
  /** Left out rather than laid over the line of a cable. */
  isOnlyClear?: boolean;
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

const stepPx = 6;

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

/** True where a line runs level for a width round a point of it. */
const isLevelAlong = (line: readonly Point[], far: number, width: number): boolean => {
  const [a, b] = [alongLine(line, far - width / 2), alongLine(line, far + width / 2)];
  return a.y === b.y && Math.abs(b.x - a.x) >= width - 1;
};

/** How far to either side of its line a label is tried, as parts of the way to lying clear beside it. */
const asides = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];
/** What stands near an end may lie a little further off, past what lies on the line. */
const asidesAtEnd = [...asides, 1.3, -1.3];

/** The best place for one form of a label; with `most` 0 it covers no other line. */
const spotFor = (
  wish: LabelWish,
  form: number,
  field: LabelField,
  { parts, set, most }: { parts: readonly Part[]; set: readonly Rect[]; most: number },
): Label | undefined => {
  const { width, height, isAlong = false } = wish.forms[form] ?? { width: 0, height: 0 };
  let best: Label | undefined;
  let least = Infinity;
  const tried = spots(lineLength(wish.line), wish.near, height / 2 + 2);
  for (const [order, far] of tried.entries()) {
    const nearness = order * (wish.near === "middle" ? 0.1 : 0.3);
    // Spots come best first: none further off can do better than this one.
    if (nearness >= least) break;
    const point = alongLine(wish.line, far);
    if (isAlong && !isLevelAlong(wish.line, far, width)) continue;
    const aside = field.halfLinePx + 2 + (point.isLevel ? height : width) / 2;
    for (const part of wish.near === "middle" ? asides : asidesAtEnd) {
      const weight = nearness + Math.abs(part) * 5;
      if (weight >= least || (isAlong && part !== 0)) continue;
      const off = part * aside;
      const centre = point.isLevel ? { x: point.x, y: point.y + off } : { x: point.x + off, y: point.y };
      const rect = rectRound(centre, width, height);
      if (!isInside(rect, field.area)) continue;
      if (field.solid.some((other) => overlaps(rect, other, 1))) continue;
      if (set.some((other) => overlaps(rect, other, 1))) continue;
      const under = linesUnder(rect, wish.own ?? wish.id, parts, most + 1);
      if (under > most) continue;
      const whole = weight + under * 40;
      if (whole >= least) continue;
      least = whole;
      best = { id: wish.id, form, ...rect };
    }
  }
  return best;
};

const mostCovered = 3;

/** The longest form that covers no other line; where none does, the shortest that covers as few as can be. */
const bestSpot = (
  wish: LabelWish,
  field: LabelField,
  parts: readonly Part[],
  set: readonly Rect[],
): Label | undefined => {
  for (const form of wish.forms.keys()) {
    const label = spotFor(wish, form, field, { parts, set, most: 0 });
    if (label) return label;
  }
  if (wish.isOnlyClear) return undefined;
  return spotFor(wish, wish.forms.length - 1, field, { parts, set, most: mostCovered });
};

const mostTurns = 6;

/** Sets all that are not still; those that found no clear place are set earlier the next time. */
const setAll = (wishes: readonly LabelWish[], field: LabelField, still: ReadonlyMap<string, Label>) => {
  const parts = partsOf(field);
  let order = wishes.filter(({ id }) => !still.has(id));
  let best: { set: Label[]; poor: LabelWish[] } | undefined;
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const set: Label[] = wishes.flatMap(({ id }) => still.get(id) ?? []);
    const poor: LabelWish[] = [];
    for (const wish of order) {
      const label = bestSpot(wish, field, parts, set);
      if (label) set.push(label);
      if (!label || linesUnder(label, wish.own ?? wish.id, parts, 1) > 0) poor.push(wish);
    }
    if (!best || poor.length < best.poor.length) best = { set, poor };
    if (poor.length === 0) break;
    order = [...poor, ...order.filter((wish) => !poor.includes(wish))];
  }
  const { set, poor } = best ?? { set: [], poor: [] };
  return { set, isWhole: poor.every(({ isOnlyClear }) => isOnlyClear) };
};

/**
 * Sets labels on cables so that none lies on another, on a plate, on the line of another cable or outside the area, in
 * the order given. One for which there is no room in any form covers as few lines as can be, or is left out: what it
 * says is also told when its cable is touched. Labels in `still` stay where they are as long as every other finds a
 * place beside them.
 */
export const layLabels = (
  wishes: readonly LabelWish[],
  field: LabelField,
  still: ReadonlyMap<string, Label> = new Map(),
): Label[] => {
  const beside = setAll(wishes, field, still);
  return beside.isWhole || still.size === 0 ? beside.set : setAll(wishes, field, new Map()).set;
};
