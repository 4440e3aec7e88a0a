import { isInside, overlaps, type Rect } from "./point.ts";

export interface RoomName {
  name: string;
  room: Rect;
  width: number;
  height: number;
}

const stepPx = 8;

/** Every place in a room that a name might have, line by line. */
function* everywhereIn({ room, width, height }: RoomName): Generator<[number, number]> {
  for (let y = room.y + stepPx; y + height + stepPx <= room.y + room.height; y += stepPx)
    for (let x = room.x + stepPx; x + width + stepPx <= room.x + room.width; x += stepPx) yield [x, y];
}

/** The corners first, then everywhere. */
function* placesIn(wish: RoomName, insetPx: number): Generator<[number, number]> {
  const { room, width, height } = wish;
  const left = room.x + insetPx;
  const right = room.x + room.width - insetPx - width;
  const top = room.y + insetPx * 0.6;
  const bottom = room.y + room.height - insetPx * 0.6 - height;
  const middle = room.x + (room.width - width) / 2;
  for (const y of [top, bottom]) for (const x of [left, right, middle]) yield [x, y];
  yield* everywhereIn(wish);
}

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
    for (const [x, y] of placesIn(wish, insetPx)) {
      const rect = { x, y, width, height };
      if (isInside(rect, room) && !taken.some((other) => overlaps(rect, other))) return [{ name, ...rect }];
    }
    return [];
  });
