import { alongLine, lineLength } from "./cable-shape.ts";
import { Boxes } from "./boxes.ts";
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
  /** How far apart it is tried along the line; a wide one need not be tried at every step. */
  stepPx?: number;
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

const usualStepPx = 6;

/** Distances along a line to try, best first. */
const spots = (
  whole: number,
  { near, stepPx = usualStepPx }: Pick<LabelWish, "near" | "stepPx">,
  clear: number,
): number[] => {
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

/** True where a label lies on nothing that is solid and on no line. */
export const isFree = (label: Rect, field: LabelField): boolean =>
  isInside(label, field.area) &&
  !field.solid.some((other) => overlaps(label, other, 1)) &&
  linesUnder(label, "", partsOf(field), 1) === 0;

/** True where a line runs level for a width round a point of it. */
const isLevelAlong = (line: readonly Point[], far: number, width: number): boolean => {
  const [a, b] = [alongLine(line, far - width / 2), alongLine(line, far + width / 2)];
  return a.y === b.y && Math.abs(b.x - a.x) >= width - 1;
};

/** How far to either side of its line a label is tried, as parts of the way to lying clear beside it. */
const asides = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];
/** What stands near an end may lie a little further off, past what lies on the line. */
const asidesAtEnd = [...asides, 1.3, -1.3];
const mostAside = Math.max(...asidesAtEnd);

const mostCovered = 3;

/** A place for a label inside the area and beside what is solid. */
interface Spot extends Rect {
  /** What speaks against it, lines apart; 0 is best. */
  weight: number;
  /** How many lines of other cables it covers. */
  under: number;
}

/** The places for one form of a label. What hangs on lines and plates alone is worked out once for all turns. */
class FormSpots {
  readonly #clear: Spot[] = [];
  readonly #covering: Spot[] = [];
  readonly #form: LabelForm;
  #tried: readonly number[] | undefined;
  #next = 0;

  constructor(
    readonly wish: LabelWish,
    form: LabelForm,
    readonly field: LabelField,
    readonly solid: Boxes,
    readonly others: Boxes,
  ) {
    this.#form = form;
  }

  /** The best place beside those that are set that covers at most so many lines of other cables. */
  best(set: readonly Rect[], most: number): Rect | undefined {
    let best: Spot | undefined;
    let least = Infinity;
    let [clearAt, coveringAt] = [0, 0];
    const look = (spot: Spot | undefined): void => {
      if (!spot || spot.under > most) return;
      const whole = spot.weight + spot.under * 40;
      if (whole >= least || set.some((other) => overlaps(spot, other, 1))) return;
      [best, least] = [spot, whole];
    };
    for (;;) {
      for (; clearAt < this.#clear.length; clearAt += 1) look(this.#clear[clearAt]);
      if (most > 0)
        for (; coveringAt < this.#covering.length; coveringAt += 1) look(this.#covering[coveringAt]);
      // Spots come best first: none further off can do better than one found.
      if (this.#next >= this.#distances.length || this.#nearness() >= least) return best;
      this.#bringNext();
    }
  }

  /** Distances along the line to try; of a form whose turn never comes none. */
  get #distances(): readonly number[] {
    return (this.#tried ??= spots(lineLength(this.wish.line), this.wish, this.#form.height / 2 + 2));
  }

  #nearness(): number {
    return this.#next * (this.wish.near === "middle" ? 0.1 : 0.3);
  }

  /** Brings the places round the next point of the line. */
  #bringNext(): void {
    const { wish, field } = this;
    const { width, height, isAlong = false } = this.#form;
    const [nearness, far] = [this.#nearness(), this.#distances[this.#next] ?? 0];
    this.#next += 1;
    if (isAlong && !isLevelAlong(wish.line, far, width)) return;
    const point = alongLine(wish.line, far);
    const aside = field.halfLinePx + 2 + (point.isLevel ? height : width) / 2;
    // All places round this point lie in here: what is further off is looked at once for all of them.
    const reach = 2 * mostAside * aside;
    const round = point.isLevel
      ? rectRound(point, width, height + reach)
      : rectRound(point, width + reach, height);
    const [solid, others] = [this.solid.near(round), this.others.near(round)];
    for (const part of isAlong ? [0] : wish.near === "middle" ? asides : asidesAtEnd) {
      const off = part * aside;
      const centre = point.isLevel ? { x: point.x, y: point.y + off } : { x: point.x + off, y: point.y };
      const rect = rectRound(centre, width, height);
      if (!isInside(rect, field.area) || solid.under(rect, 1) > 0) continue;
      const under = others.under(rect, mostCovered + 1);
      const spot = { ...rect, weight: nearness + Math.abs(part) * 5, under };
      if (under === 0) this.#clear.push(spot);
      else if (under <= mostCovered) this.#covering.push(spot);
    }
  }
}

/** The places for each form of a label, given what is solid and the strips of all lines. */
const formSpots = (wish: LabelWish, field: LabelField, solid: Boxes, parts: readonly Part[]): FormSpots[] => {
  const others = new Boxes(parts.filter(({ id }) => id !== (wish.own ?? wish.id)));
  return wish.forms.map((form) => new FormSpots(wish, form, field, solid, others));
};

/** The longest form that covers no other line; where none does, the shortest that covers as few as can be. */
const bestSpot = (wish: LabelWish, forms: readonly FormSpots[], set: readonly Rect[]): Label | undefined => {
  const label = (form: number, most: number): Label | undefined => {
    const spot = forms[form]?.best(set, most);
    return spot && { id: wish.id, form, x: spot.x, y: spot.y, width: spot.width, height: spot.height };
  };
  for (const form of forms.keys()) {
    const clear = label(form, 0);
    if (clear) return clear;
  }
  return wish.isOnlyClear ? undefined : label(forms.length - 1, mostCovered);
};

const mostTurns = 6;

/** Sets all that are not still; those that found no clear place are set earlier the next time. */
const setAll = (wishes: readonly LabelWish[], field: LabelField, still: ReadonlyMap<string, Label>) => {
  const parts = partsOf(field);
  const solid = new Boxes(field.solid, 1);
  let order = wishes.filter(({ id }) => !still.has(id));
  const spotsOf = new Map(order.map((wish) => [wish, formSpots(wish, field, solid, parts)]));
  let best: { set: Label[]; poor: LabelWish[] } | undefined;
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const set: Label[] = wishes.flatMap(({ id }) => still.get(id) ?? []);
    const poor: LabelWish[] = [];
    for (const wish of order) {
      const label = bestSpot(wish, spotsOf.get(wish) ?? [], set);
      if (label) set.push(label);
      if (!label || linesUnder(label, wish.own ?? wish.id, parts, 1) > 0) poor.push(wish);
    }
    if (!best || poor.length < best.poor.length) best = { set, poor };
    const next = [...poor, ...order.filter((wish) => !poor.includes(wish))];
    // The same order once more ends the same way.
    if (next.every((wish, at) => wish === order[at])) break;
    order = next;
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

/**
 * Sets one label by the first of several wishes for it under which it covers no line, or else by the first that finds
 * any place.
 */
export const layByFirst = (wishes: readonly LabelWish[], field: LabelField): Label | undefined => {
  const parts = partsOf(field);
  const solid = new Boxes(field.solid, 1);
  const tried = wishes.map((wish) => ({ wish, forms: formSpots(wish, field, solid, parts) }));
  for (const isOnlyClear of [true, false])
    for (const { wish, forms } of tried) {
      const label = bestSpot({ ...wish, isOnlyClear }, forms, []);
      if (label) return label;
    }
  return undefined;
};
