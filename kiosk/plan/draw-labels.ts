import {
  isFree,
  type Label,
  type LabelField,
  type LabelWish,
  layByFirst,
  layLabels,
} from "../geometry/lay-labels.ts";
import { overlaps, type Rect } from "../geometry/point.ts";
import { sharedRunPx } from "../geometry/shared-run.ts";
import { roleName } from "../wiring/place-name.ts";
import type { DrawnCable } from "./draw-cables.ts";
import { stripsOf } from "./draw-house.ts";
import { isDrawnBackwards } from "./drawn-backwards.ts";
import type { PlanGround } from "./plan-ground.ts";
import { zoneLabelId, zoneWishes } from "./draw-zones.ts";
import type { PlanInput } from "./plan-input.ts";

export type CableEndName = "start" | "end";
export const endNames: readonly CableEndName[] = ["start", "end"];

/** What a label of that form says: the last form is the shortest text again, in less room. */
export const labelText = ({ texts }: DrawnCable, form: number): string => texts[form] ?? texts.at(-1) ?? "";

/** The id of the letters at an end of a cable. */
export const endLabelId = (cable: string, end: CableEndName): string => `${cable}/${end}`;

/** Letters of an end in the order the cores are drawn in where the cable meets the plate: from the left, or the top. */
export const endLetters = (
  { cores, line }: DrawnCable,
  end: CableEndName,
  words: PlanInput["words"],
): string[] => {
  const letters = cores.flatMap((core) => {
    const role = end === "start" ? core.fromRole : core.toRole;
    return role ? [roleName(role, words)] : [];
  });
  return isDrawnBackwards(line, end) ? letters.toReversed() : letters;
};

/** Room for each text of a label; then for the shortest in less room, and last with its mark above the number. */
const sizeForms = (
  { mmPx, captionPx, measure }: PlanInput,
  texts: readonly string[],
  markPx: number,
): LabelWish["forms"] => {
  const [padPx, tightPx] = [mmPx * 1.3, mmPx * 0.5];
  const widthOf = (text: string) => measure(text, captionPx, true);
  const short = widthOf(texts.at(-1) ?? "") + 2 * tightPx;
  return [
    ...texts.map((text, i) => ({
      width: widthOf(text) + 2 * padPx + markPx,
      height: captionPx * 1.25,
      isAlong: i < texts.length - 1,
    })),
    { width: short + markPx, height: captionPx * 1.2 },
    ...(markPx > 0 ? [{ width: Math.max(short, markPx + 2), height: captionPx * 1.2 + markPx }] : []),
  ];
};

/** True where the mark of a label stands above its number. */
export const isStacked = ({ texts }: DrawnCable, form: number): boolean => form > texts.length;

/** What each cable would write where. The forms are measured where a place is looked for: most labels stay. */
const wishesOf = (input: PlanInput, cables: readonly DrawnCable[]): LabelWish[] => {
  const { mmPx, captionPx, words } = input;
  const markPx = mmPx * 4.4;
  const belowPx = mmPx * 3.4;
  const letters = cables
    .filter(({ hasLetters }) => hasLetters)
    .flatMap((drawn) =>
      endNames.map((end): LabelWish => ({
        id: endLabelId(drawn.cable.id, end),
        own: drawn.cable.id,
        line: drawn.line,
        near: end,
        get forms() {
          const width = endLetters(drawn, end, words).length * captionPx * 0.74 + 4;
          return [{ width, height: captionPx * 0.98 }];
        },
      })),
    );
  const sizes = cables.map(({ cable, line, texts, weight }): LabelWish => ({
    id: cable.id,
    line,
    near: "middle",
    get forms() {
      return sizeForms(input, texts, weight ? markPx : cable.carries?.isBelow ? belowPx : 0);
    },
  }));
  return [...sizes, ...letters];
};

/**
 * What a zone says, on the first of its runs where it covers no cable, or else where it covers as few as can be. It
 * stays where it was as long as that place is free, or where cables have only come, and none of them there: to look
 * along all runs takes longer than all the rest.
 */
const zoneLabel = (
  wishes: () => readonly LabelWish[],
  field: LabelField,
  set: readonly Label[],
  last: Label | undefined,
  come: LabelField["lines"] | undefined,
): Label | undefined => {
  const room = { ...field, solid: [...field.solid, ...set] };
  if (last && isFree(last, { ...room, lines: come ?? room.lines })) return last;
  return layByFirst(wishes(), room);
};

/** Of these lines those of the cables that have come; undefined where one is gone or was laid anew. */
const comeSince = (
  lines: LabelField["lines"],
  before: readonly DrawnCable[],
): LabelField["lines"] | undefined => {
  const known = new Set<LabelWish["line"]>(before.map(({ line }) => line));
  const come = lines.filter(({ line }) => !known.has(line));
  return come.length === lines.length - before.length ? come : undefined;
};

/** True where a cable asks for the same labels as it did before: that it is on the disk by now changes none. */
const isLabelledAlike = (one: DrawnCable, before: DrawnCable | undefined): boolean =>
  one === before ||
  (before !== undefined &&
    one.line === before.line &&
    one.weight === before.weight &&
    one.hasLetters === before.hasLetters &&
    one.cable.carries?.isBelow === before.cable.carries?.isBelow &&
    one.texts.join() === before.texts.join() &&
    isLetteredAlike(one.cores, before.cores));

const isLetteredAlike = (cores: DrawnCable["cores"], before: DrawnCable["cores"]): boolean =>
  cores.length === before.length &&
  cores.every(({ fromRole, toRole }, i) => fromRole === before[i]?.fromRole && toRole === before[i]?.toRole);

/**
 * The labels of cables by their ids. Labels of cables that are drawn as they were in `last` stay: one more cable
 * moves none of them, as long as it finds a place of its own.
 */
export const drawLabels = (
  input: PlanInput,
  ground: PlanGround,
  cables: readonly DrawnCable[],
  marks: readonly Rect[],
  last: { cables: readonly DrawnCable[]; marks: readonly Rect[]; labels: ReadonlyMap<string, Label> },
): ReadonlyMap<string, Label> => {
  if (!input.isTypefaceThere) return new Map();
  const isMarkedAlike = marks === last.marks;
  const before = new Map(isMarkedAlike ? last.cables.map((drawn) => [drawn.cable.id, drawn]) : []);
  const alike = cables.filter((drawn) => isLabelledAlike(drawn, before.get(drawn.cable.id)));
  const isAllAlike = isMarkedAlike && alike.length === cables.length && cables.length === last.cables.length;
  if (isAllAlike && last.labels.size > 0) return last.labels;
  const still = new Map<string, Label>();
  for (const drawn of alike)
    for (const id of [drawn.cable.id, ...endNames.map((end) => endLabelId(drawn.cable.id, end))]) {
      const label = last.labels.get(id);
      if (label) still.set(id, label);
    }
  const field: LabelField = {
    area: ground.area,
    solid: [...ground.plates, ...marks],
    lines: cables.map(({ cable, line }) => ({ id: cable.id, line })),
    halfLinePx: input.mmPx * 1.5,
  };
  const labels = layLabels(wishesOf(input, cables), field, still);
  const come = isMarkedAlike ? comeSince(field.lines, last.cables) : undefined;
  for (const [index, zone] of input.attempt.zones.entries()) {
    const id = zoneLabelId(index);
    const wishes = () => zoneWishes(input, ground, zone, id);
    const label = zoneLabel(wishes, field, labels, last.labels.get(id), come);
    if (label) labels.push(label);
  }
  return new Map(labels.map((label) => [label.id, label]));
};

/** True where no cable has come, gone or moved. */
export const isLaidAlike = (cables: readonly DrawnCable[], before: readonly DrawnCable[]): boolean =>
  cables.length === before.length && cables.every(({ line }, i) => line === before[i]?.line);

/** How many cables lie along another, do not say their size in a place of their own, or miss letters that they need. */
export const poorLabels = (cables: readonly DrawnCable[], labels: ReadonlyMap<string, Label>): number => {
  const strips = new Map(cables.map((drawn) => [drawn, stripsOf(drawn)]));
  return cables.filter((drawn) => {
    const { id } = drawn.cable;
    const label = labels.get(id);
    const lacksLetters = drawn.hasLetters && endNames.some((end) => !labels.has(endLabelId(id, end)));
    const isCovering = (other: DrawnCable) =>
      other !== drawn && label && strips.get(other)?.some((strip) => overlaps(label, strip));
    const isUnder = (other: DrawnCable) => other !== drawn && sharedRunPx(drawn.line, other.line) > 1;
    return !label || lacksLetters || cables.some((other) => isCovering(other) || isUnder(other));
  }).length;
};
