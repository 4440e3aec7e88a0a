import { stationOf } from "../../shared/board/ids.ts";
import { jogCount } from "../geometry/jogs.ts";
import type { Label } from "../geometry/lay-labels.ts";
import type { Point, Rect } from "../geometry/point.ts";
import { type DrawnCable, drawCables, type LayBy } from "./draw-cables.ts";
import { drawRoomNames, drawWalls } from "./draw-house.ts";
import { drawLabels, isLaidAlike, poorLabels } from "./draw-labels.ts";
import { drawMarks, type PlateMark } from "./draw-marks.ts";
import { drawZones, type ZoneBand, zoneLabelId } from "./draw-zones.ts";
import { type PlanGround, planGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";
import { strayLanes } from "./stray-lanes.ts";
import { plateText } from "./plate-text.ts";

/** The plan of the house with all that lies on it, in pixels of its area. */
export interface PlanDrawing {
  /** What the ground was made from: with the same mark it is the same ground. */
  groundMark: string;
  ground: PlanGround;
  walls: { a: Point; b: Point }[];
  cables: readonly DrawnCable[];
  zones: ZoneBand[];
  marks: readonly PlateMark[];
  labels: ReadonlyMap<string, Label>;
  /** The cables lie as they do only because some found no room as they would be laid at once. */
  isMakeshift: boolean;
  /**
   * What is amiss with cables and labels all the same, 0 for nothing: it was tried to mend, and is not again. Worked
   * out where it is asked for.
   */
  amiss: () => number;
  rooms: (Rect & { name: string })[];
}

/** Stations that a cable leads to though the plan has no place for them: they make it another ground. */
const strayStations = ({ attempt }: PlanInput): string[] => {
  const placed = new Set<string>(attempt.scenario.plan.places.map(({ station }) => station));
  const wired = new Set(attempt.cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]));
  return [...wired].filter((station) => !placed.has(station)).sort();
};

const groundMarkOf = (input: PlanInput, strays: readonly string[]): string => {
  const { attempt, face, area, mmPx, captionPx, words, isTypefaceThere } = input;
  // The word itself: a language may come later than it is asked for.
  const spoken = `${words.language} ${words.t("kind.way")}`;
  return JSON.stringify([
    attempt.id,
    attempt.scenario.id,
    attempt.zones,
    face.id,
    strays,
    area,
    mmPx,
    captionPx,
    spoken,
    isTypefaceThere,
  ]);
};

type Wires = Pick<PlanDrawing, "cables" | "marks" | "labels" | "isMakeshift" | "amiss">;
const noWires: Wires = { cables: [], marks: [], labels: new Map(), isMakeshift: false, amiss: () => 0 };

/**
 * Ways to lay cables anew, in turn, where something is amiss as they are laid at once. They mend every answer of
 * every scenario on every panel of `tests/kiosk/plan/`; each costs as much as a whole plan, so they are few.
 */
const others: readonly LayBy[] = [
  { first: "turned", room: 1, pitch: 0.93 },
  { first: "longest", room: 1, pitch: 1.04 },
  { first: "shortest", room: 1, pitch: 0.9 },
  { first: "longest", room: 1, pitch: 0.86 },
  { first: "longest", room: 1, pitch: 0.9 },
  { first: "shortest", room: 1, pitch: 0.97 },
  { first: "shortest", room: 1, pitch: 0.93 },
  { first: "turned", room: 1.8, pitch: 0.9 },
  { first: "turned", room: 1, pitch: 1.1 },
];

/** The wires laid beside those of `last`; all of them as they are laid at once, or by another way. */
const layWires = (input: PlanInput, ground: PlanGround, last: Wires, by?: LayBy): Wires => {
  const cables = drawCables(input, ground, last.cables, by);
  const marks = drawMarks(input, ground, cables, last.marks);
  const labels = drawLabels(input, ground, cables, marks, last);
  const isMakeshift = by !== undefined || last.isMakeshift;
  const isAsBefore = cables === last.cables || (labels === last.labels && isLaidAlike(cables, last.cables));
  if (!input.isTypefaceThere || isAsBefore) return { cables, marks, labels, isMakeshift, amiss: last.amiss };
  const amiss = once(() => howAmiss(input, ground, cables, labels));
  return { cables, marks, labels, isMakeshift, amiss };
};

/** First labels and cables without a place of their own, then how far cables stray. */
const howAmiss = (
  { attempt, mmPx }: PlanInput,
  ground: PlanGround,
  cables: Wires["cables"],
  labels: Wires["labels"],
): number => {
  const untoldZones = attempt.zones.filter((_, index) => !labels.has(zoneLabelId(index))).length;
  const poor = poorLabels(cables, labels) + untoldZones;
  const jogs = cables.reduce((sum, { line, widthPx }) => sum + jogCount(line, widthPx), 0);
  return poor * 1000 + jogs + strayLanes(cables, ground, mmPx);
};

/** Worked out when it is first asked for. */
const once = (work: () => number): (() => number) => {
  let known: number | undefined;
  return () => (known ??= work());
};

/** Pins of it are still on their way: it was sensed a moment ago, and not whole. */
const isHalfIn = ({ cable, cores }: DrawnCable): boolean =>
  cable.isUnsaved === true && cores.some(({ isThere }) => !isThere);

/**
 * A simulated cable came since `before`: its pins, too, make contact one after the other, and it lies as it does where
 * each is drawn by itself.
 */
const isPluggedNow = ({ attempt, face }: PlanInput, before: Wires): boolean => {
  if (!face.isSimulated) return false;
  const known = new Set(before.cables.map(({ cable }) => cable.id));
  return attempt.cables.some(({ id, isUnsaved }) => isUnsaved === true && !known.has(id));
};

/** Of more cables than this what is makeshift stays so while nothing is amiss: to lay all again takes too long. */
const mostLaidAgain = 9;

/**
 * The cables with their labels; where a label finds no place of its own, or a cable lies far off the route it was
 * judged on, all are laid again. That is makeshift: the pins of a plug make contact one after the other, and the
 * letters of a cable that is half in want more room than it will once it is in. So nothing is laid anew for one whose
 * pins are on their way, and as soon as they lie as well as they would be laid at once, they lie so.
 */
const drawWires = (input: PlanInput, ground: PlanGround, before: Wires): Wires => {
  let best = layWires(input, ground, before);
  if (!input.isTypefaceThere || best.cables === before.cables || best.cables.some(isHalfIn)) return best;
  const isWorse =
    best.amiss !== before.amiss && !isPluggedNow(input, before) && best.amiss() > before.amiss();
  const isLess = best.cables.length < before.cables.length && best.amiss() > 0;
  const isUndone = before.isMakeshift && best.cables.length <= mostLaidAgain;
  if (isUndone || (before.cables.length > 0 && (isWorse || isLess))) {
    const plain = layWires(input, ground, noWires);
    const [plainAmiss, bestAmiss] = [plain.amiss(), best.amiss()];
    if (plainAmiss < bestAmiss || (plainAmiss === bestAmiss && before.isMakeshift)) best = plain;
  }
  if (!isWorse) return best;
  for (const by of others) {
    if (best.amiss() === 0) break;
    const other = layWires(input, ground, noWires, by);
    if (other.amiss() < best.amiss()) best = other;
  }
  return best;
};

/**
 * Draws the plan. What is the same as in `last` stays as it was and where it was, down to the very object: plugging
 * one cable moves no other, and nothing is drawn again for it.
 */
export const drawPlan = (input: PlanInput, last?: PlanDrawing): PlanDrawing => {
  const strays = strayStations(input);
  const groundMark = groundMarkOf(input, strays);
  const before = last?.groundMark === groundMark ? last : undefined;
  const ground =
    before?.ground ??
    planGround(
      input.attempt.scenario,
      input.face,
      strays,
      input.area,
      input.mmPx,
      (station) => plateText(station, input).size,
    );
  const { cables, marks, labels, isMakeshift, amiss } = drawWires(input, ground, before ?? noWires);
  const isSame = before?.labels === labels && before.marks === marks && isLaidAlike(cables, before.cables);
  return {
    groundMark,
    ground,
    walls: before?.walls ?? drawWalls(input, ground),
    zones: before?.zones ?? drawZones(input, ground),
    cables,
    marks,
    labels,
    isMakeshift,
    amiss,
    rooms: isSame ? before.rooms : drawRoomNames(input, ground, cables, [...labels.values(), ...marks]),
  };
};
