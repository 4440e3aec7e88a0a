import { stationOf } from "../../shared/board/ids.ts";
import type { Label } from "../geometry/place-labels.ts";
import type { Point, Rect } from "../geometry/point.ts";
import { type DrawnCable, drawCables } from "./draw-cables.ts";
import { drawRoomNames, drawWalls } from "./draw-house.ts";
import { drawLabels } from "./draw-labels.ts";
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
    face.id,
    wired,
    area,
    mmPx,
    captionPx,
    spoken,
    isTypefaceThere,
  ]);
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
  const known = { cables: before?.cables ?? [], labels: before?.labels ?? new Map<string, Label>() };
  const cables = drawCables(input, ground, known.cables);
  const labels = drawLabels(input, ground, cables, known);
  const isSame = before?.cables === cables && before.labels === labels;
  return {
    groundMark,
    ground,
    walls: before?.walls ?? drawWalls(input, ground),
    cables,
    labels,
    rooms: isSame ? before.rooms : drawRoomNames(input, ground, cables, labels.values()),
  };
};
