import { stationOf } from "../../shared/board/ids.ts";
import type { Label } from "../geometry/lay-labels.ts";
import type { Point, Rect } from "../geometry/point.ts";
import { type DrawnCable, drawCables, type LayBy } from "./draw-cables.ts";
import { drawRoomNames, drawWalls } from "./draw-house.ts";
import { routeOrders } from "../geometry/route-cables.ts";
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
  rooms: (Rect & { name: string })[];
}

const wiredStations = ({ attempt }: PlanInput): string[] => [
  ...new Set(attempt.cables.flatMap(({ from, to }) => [stationOf(from), stationOf(to)]).sort()),
];

const groundMarkOf = (input: PlanInput, wired: readonly string[]): string => {
  const { attempt, face, area, mmPx, captionPx, words, isTypefaceThere } = input;
  // The word itself: a language may come later than it is asked for.
  const spoken = `${words.language} ${words.t("kind.way")}`;
  return JSON.stringify([
    attempt.id,
    attempt.scenario.id,
    attempt.zones,
    face.id,
    wired,
    area,
    mmPx,
    captionPx,
    spoken,
    isTypefaceThere,
  ]);
};

type Wires = Pick<PlanDrawing, "cables" | "marks" | "labels">;

const layWires = (input: PlanInput, ground: PlanGround, last: Wires, by?: LayBy): Wires => {
  const cables = drawCables(input, ground, last.cables, by);
  const marks = drawMarks(input, ground, cables, last.marks);
  return { cables, marks, labels: drawLabels(input, ground, cables, marks, last) };
};

const others: readonly LayBy[] = [1, 0.86].flatMap((pitch) =>
  [1, 1.8].flatMap((room) => routeOrders.map((first) => ({ first, room, pitch }))),
);

/** The cables with their labels; where a label finds no place of its own, all are laid again in another order. */
const drawWires = (input: PlanInput, ground: PlanGround, before: Wires): Wires => {
  let best = layWires(input, ground, before);
  let least =
    input.isTypefaceThere && best.cables !== before.cables ? poorLabels(best.cables, best.labels) : 0;
  for (const by of others) {
    if (least === 0) break;
    const other = layWires(input, ground, { cables: [], marks: [], labels: new Map() }, by);
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
  const wired = wiredStations(input);
  const groundMark = groundMarkOf(input, wired);
  const before = last?.groundMark === groundMark ? last : undefined;
  const ground =
    before?.ground ??
    planGround(
      input.attempt.scenario,
      input.face,
      wired,
      input.area,
      input.mmPx,
      (station) => plateText(station, input).size,
    );
  const wires = {
    cables: before?.cables ?? [],
    marks: before?.marks ?? [],
    labels: before?.labels ?? new Map<string, Label>(),
  };
  const { cables, marks, labels } = drawWires(input, ground, wires);
  const isSame = before?.cables === cables && before.labels === labels && before.marks === marks;
  return {
    groundMark,
    ground,
    walls: before?.walls ?? drawWalls(input, ground),
    zones: before?.zones ?? drawZones(input, ground),
    cables,
    marks,
    labels,
    rooms: isSame ? before.rooms : drawRoomNames(input, ground, cables, [...labels.values(), ...marks]),
  };
};
