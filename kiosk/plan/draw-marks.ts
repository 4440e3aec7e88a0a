import type { StationId } from "../../shared/board/ids.ts";
import type { Plate } from "../geometry/lay-plates.ts";
import { isInside, overlaps, type Rect } from "../geometry/point.ts";
import { probesAtStation } from "../face/probes-on.ts";
import { heaviestAt } from "../notes/heaviest-at.ts";
import type { Weight } from "../notes/weight.ts";
import type { DrawnCable } from "./draw-cables.ts";
import { stripsOf } from "./draw-house.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";

/** What a mark beside a plate says: a finding about its station, contacts that cannot be read, leads stacked on one, a probe. */
export type PlateSignName = Weight | "unknown" | "joint" | "red" | "black";

/** A mark beside a plate. */
export interface PlateMark extends Rect {
  station: StationId;
  sign: PlateSignName;
}

export const markMm = 4.4;
const gapPx = 2;

/** Places round a plate, outside it: beside its corners first, then along its edges. */
const spotsRound = ({ x, y, width, height }: Plate, size: number): Rect[] => {
  const [left, right] = [x - size - gapPx, x + width + gapPx];
  const [top, bottom] = [y - size - gapPx, y + height + gapPx];
  const rect = (atX: number, atY: number): Rect => ({ x: atX, y: atY, width: size, height: size });
  const along = (from: number, far: number) => [0, 0.25, 0.5, 0.75, 1].map((part) => from + part * far);
  return [
    rect(right, y),
    rect(left, y),
    rect(right, y + height - size),
    rect(left, y + height - size),
    ...along(x, width - size).flatMap((atX) => [rect(atX, top), rect(atX, bottom)]),
    ...along(y, height - size).flatMap((atY) => [rect(right, atY), rect(left, atY)]),
    ...[left, right].flatMap((atX) => [rect(atX, top), rect(atX, bottom)]),
  ];
};

/**
 * The marks of the stations, each right outside its plate: never on a plate or on another mark, and on no cable as
 * long as there is a place without. The same list again where it is what it was.
 */
export const drawMarks = (
  { attempt, mmPx }: PlanInput,
  ground: PlanGround,
  cables: readonly DrawnCable[],
  last: readonly PlateMark[],
): readonly PlateMark[] => {
  const heaviest = heaviestAt(attempt.verdict);
  const strips = cables.flatMap(stripsOf);
  const marks: PlateMark[] = [];
  for (const plate of ground.plates) {
    const station = plate.id as StationId;
    const isAt = (contact: string) => contact.startsWith(`${station}.`);
    const weight = heaviest.get(station);
    const signs: PlateSignName[] = [
      ...(weight ? [weight] : []),
      ...(attempt.unknown.some(isAt) ? (["unknown"] as const) : []),
      ...(attempt.joints.some((joint) => joint.some(isAt)) ? (["joint"] as const) : []),
      ...probesAtStation(attempt.test, isAt),
    ];
    for (const sign of signs) {
      const spots = spotsRound(plate, markMm * mmPx).filter(
        (spot) =>
          isInside(spot, ground.area) && ![...ground.plates, ...marks].some((one) => overlaps(spot, one, 1)),
      );
      const covered = (spot: Rect) => strips.filter((strip) => overlaps(spot, strip)).length;
      const best = spots.toSorted((a, b) => covered(a) - covered(b))[0];
      if (best) marks.push({ station, sign, ...best });
    }
  }
  return JSON.stringify(marks) === JSON.stringify(last) ? last : marks;
};
