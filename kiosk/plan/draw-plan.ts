import { stationOf } from "../../shared/board/ids.ts";
import type { Label } from "../geometry/lay-labels.ts";
import type { Point, Rect } from "../geometry/point.ts";
import { type DrawnCable, drawCables, type LayBy } from "./draw-cables.ts";
import { drawRoomNames, drawWalls } from "./draw-house.ts";
import { routeOrders } from "../geometry/route-field.ts";
import { drawLabels, poorLabels } from "./draw-labels.ts";
import { drawMarks, type PlateMark } from "./draw-marks.ts";
import { drawZones, type ZoneBand } from "./draw-zones.ts";
import { type PlanGround, planGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";
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

type Wires = Pick<PlanDrawing, "cables" | "marks" | "labels" | "isMakeshift">;
const noWires: Wires = { cables: [], marks: [], labels: new Map(), isMakeshift: false };

/** Ways to lay cables anew; the first is how they are laid at once. */
const others: readonly LayBy[] = [1, 0.86].flatMap((pitch) =>
  [1, 1.8].flatMap((room) => routeOrders.map((first) => ({ first, room, pitch }))),
);

const layWires = (input: PlanInput, ground: PlanGround, last: Wires, by?: LayBy): Wires => {
  const cables = drawCables(input, ground, last.cables, by);
  const marks = drawMarks(input, ground, cables, last.marks);
  const labels = drawLabels(input, ground, cables, marks, last);
  return { cables, marks, labels, isMakeshift: by === undefined ? last.isMakeshift : by !== others[0] };
};

/** Pins of it are still on their way: it was sensed a moment ago, and not whole. */
const isHalfIn = ({ cable, cores }: DrawnCable): boolean =>
  cable.isUnsaved === true && cores.some(({ isThere }) => !isThere);

/**
 * The cables with their labels; where a label finds no place of its own, all are laid again in another order. That
 * is makeshift: the pins of a plug make contact one after the other, and the letters of a cable that is half in want
 * more room than it will once it is in. So nothing is laid anew for one whose pins are on their way, and as soon as
 * they all find room as they would be laid at once, they lie so.
 */
const drawWires = (input: PlanInput, ground: PlanGround, before: Wires): Wires => {
  let best = layWires(input, ground, before);
  if (!input.isTypefaceThere || best.cables === before.cables || best.cables.some(isHalfIn)) return best;
  if (before.isMakeshift) {
    const plain = layWires(input, ground, noWires);
    if (poorLabels(plain.cables, plain.labels) === 0) return plain;
  }
  let least = poorLabels(best.cables, best.labels);
  for (const by of others) {
    if (least === 0) break;
    const other = layWires(input, ground, noWires, by);
    const poor = poorLabels(other.cables, other.labels);
    if (poor < least) [best, least] = [other, poor];
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
  const { cables, marks, labels, isMakeshift } = drawWires(input, ground, before ?? noWires);
  const isSame = before?.cables === cables && before.labels === labels && before.marks === marks;
  return {
    groundMark,
    ground,
    walls: before?.walls ?? drawWalls(input, ground),
    zones: before?.zones ?? drawZones(input, ground),
    cables,
    marks,
    labels,
    isMakeshift,
    rooms: isSame ? before.rooms : drawRoomNames(input, ground, cables, [...labels.values(), ...marks]),
  };
};
