import type { ContactId, StationId } from "../../shared/board/ids.ts";
import type { BoardFace } from "../../shared/protocol/bench-view.ts";
import type { Point, Rect } from "../geometry/point.ts";

/**
 * Where the stations of a board lie in an area, from the parts of its face they take; none smaller than a finger
 * needs, as long as the board leaves room for that.
 */
export const faceRects = (
  face: BoardFace,
  area: { width: number; height: number },
  leastPx: number,
): Map<StationId, Rect> =>
  new Map(
    face.stations.map(({ id, face: { x, y, width, height } }) => {
      const wide = Math.max(width * area.width, Math.min(leastPx, area.width));
      const high = Math.max(height * area.height, Math.min(leastPx, area.height));
      return [
        id,
        {
          x: Math.min(x * area.width, area.width - wide),
          y: Math.min(y * area.height, area.height - high),
          width: wide,
          height: high,
        },
      ];
    }),
  );

/** Where the contacts of every station are drawn under its label: a column an entry, a row a contact. */
export const contactDots = (
  face: BoardFace,
  rects: ReadonlyMap<StationId, Rect>,
  labelPx: number,
): Map<ContactId, Point> => {
  const dots = new Map<ContactId, Point>();
  for (const { id, entries } of face.stations) {
    const rect = rects.get(id);
    if (!rect) continue;
    const room = Math.max(0, rect.height - labelPx);
    for (const [column, { contacts }] of entries.entries())
      for (const [row, contact] of contacts.entries())
        dots.set(contact.id, {
          x: rect.x + (rect.width * (column + 0.5)) / entries.length,
          y: rect.y + labelPx + (room * (row + 0.4)) / contacts.length,
        });
  }
  return dots;
};
