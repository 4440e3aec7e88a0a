import { isInside, overlaps, type Rect } from "./point.ts";

export interface RoomName {
  name: string;
  room: Rect;
  width: number;
  height: number;
}

const stepPx = 8;

/** Every place in a room that a name might have, line by line. */
const everywhereIn = ({ room, width, height }: RoomName): [number, number][] => {
  const places: [number, number][] = [];
  for (let y = room.y + stepPx; y + height + stepPx <= room.y + room.height; y += stepPx)
    for (let x = room.x + stepPx; x + width + stepPx <= room.x + room.width; x += stepPx) places.push([x, y]);
  return places;
};

/**
 * Writes the names of rooms where they are free of plates, labels and cables: in a corner where one is free, top
 * left best, or else anywhere in the room. A name for which there is no place is left out.
 */
export const layRoomNames = (
  names: readonly RoomName[],
  taken: readonly Rect[],
  insetPx: number,
): (Rect & { name: string })[] =>
  names.flatMap((wish) => {
    const { name, room, width, height } = wish;
    const left = room.x + insetPx;
    const right = room.x + room.width - insetPx - width;
    const top = room.y + insetPx * 0.6;
    const bottom = room.y + room.height - insetPx * 0.6 - height;
    const middle = room.x + (room.width - width) / 2;
    const corners: [number, number][] = [
      [left, top],
      [right, top],
      [middle, top],
      [left, bottom],
      [right, bottom],
      [middle, bottom],
    ];
    for (const [x, y] of [...corners, ...everywhereIn(wish)]) {
      const rect = { x, y, width, height };
      if (isInside(rect, room) && !taken.some((other) => overlaps(rect, other))) return [{ name, ...rect }];
    }
    return [];
  });
