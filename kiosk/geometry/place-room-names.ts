import { overlaps, type Rect } from "./point.ts";

export interface RoomName {
  name: string;
  room: Rect;
  width: number;
  height: number;
}

/**
 * Writes the names of rooms in the corner of each that is freest of plates, labels and cables: top left where it
 * can be. A name for which no corner is free is left out.
 */
export const placeRoomNames = (
  names: readonly RoomName[],
  taken: readonly Rect[],
  insetPx: number,
): (Rect & { name: string })[] =>
  names.flatMap(({ name, room, width, height }) => {
    const left = room.x + insetPx;
    const right = room.x + room.width - insetPx - width;
    const top = room.y + insetPx * 0.6;
    const bottom = room.y + room.height - insetPx * 0.6 - height;
    const middle = room.x + (room.width - width) / 2;
    const corners = [
      [left, top],
      [right, top],
      [middle, top],
      [left, bottom],
      [right, bottom],
      [middle, bottom],
    ] as const;
    for (const [x, y] of corners) {
      const rect = { x, y, width, height };
      if (!taken.some((other) => overlaps(rect, other))) return [{ name, ...rect }];
    }
    return [];
  });
