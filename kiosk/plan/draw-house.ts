import { toPx } from "../geometry/fit-plan.ts";
import { layRoomNames } from "../geometry/lay-room-names.ts";
import type { Point, Rect } from "../geometry/point.ts";
import type { DrawnCable } from "./draw-cables.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";

/** The walls that are drawn as such, in pixels. */
export const drawWalls = ({ attempt }: PlanInput, { fit }: PlanGround): { a: Point; b: Point }[] =>
  attempt.scenario.plan.walls
    .filter(({ as = "wall" }) => as === "wall")
    .map(({ from, to }) => ({ a: toPx(fit, from), b: toPx(fit, to) }));

/** The strips that the straight parts of a cable are drawn in. */
export const stripsOf = ({ line, widthPx }: Pick<DrawnCable, "line" | "widthPx">): Rect[] =>
  line.slice(1).map((b, i) => {
    const a = line[i] ?? b;
    return {
      x: Math.min(a.x, b.x) - widthPx / 2,
      y: Math.min(a.y, b.y) - widthPx / 2,
      width: Math.abs(a.x - b.x) + widthPx,
      height: Math.abs(a.y - b.y) + widthPx,
    };
  });

/** The names of the rooms, where plates, labels and cables leave room for them. */
export const drawRoomNames = (
  { attempt, words, measure, captionPx, mmPx }: PlanInput,
  { fit, plates }: PlanGround,
  cables: readonly DrawnCable[],
  labels: Iterable<Rect>,
): (Rect & { name: string })[] =>
  layRoomNames(
    attempt.scenario.plan.rooms.map((room) => {
      const name = words.of(room.name);
      const a = toPx(fit, room);
      const b = toPx(fit, { x: room.x + room.width, y: room.y + room.height });
      return {
        name,
        room: { ...a, width: b.x - a.x, height: b.y - a.y },
        width: measure(name, captionPx, false),
        height: captionPx,
      };
    }),
    [...plates, ...labels, ...cables.flatMap(stripsOf)],
    mmPx * 1.8,
  );
