import { distanceToRect, type Point, type Rect } from "../geometry/point.ts";

/** A finger or pen that went down on a plate, until it is lifted. */
export interface Press {
  station: string;
  at: Point;
  now: Point;
  isDrag: boolean;
}

type Plates = readonly (Rect & { id: string })[];

/** A press that moves less than this is a tap. */
const dragFromMm = 2.5;
/** What ends or begins so near to a plate is meant for it. */
const reachMm = 4;
/** A finger that slipped no further than this has tapped, wherever it is lifted. */
const wobbleMm = 5;

/** What a lifted finger meant. */
export type Release =
  { kind: "tap"; station: string } | { kind: "lay"; from: string; to: string } | { kind: "missed" };

/** A press that begins at a point; undefined where there is no plate. */
export const pressAt = (at: Point, plates: Plates): Press | undefined => {
  const plate = plates.find((one) => distanceToRect(at, one) === 0);
  return plate && { station: plate.id, at, now: at, isDrag: false };
};

/** The press moved on; once it is a drag it stays one. */
export const movedTo = (press: Press, now: Point, mmPx: number): Press => ({
  ...press,
  now,
  isDrag: press.isDrag || Math.hypot(now.x - press.at.x, now.y - press.at.y) > dragFromMm * mmPx,
});

/** The plate nearest to a point, as long as that is within reach of it. */
export const plateUnder = (point: Point, plates: Plates, mmPx: number): string | undefined => {
  const far = (plate: Rect) => distanceToRect(point, plate);
  const nearest = plates.toSorted((a, b) => far(a) - far(b))[0];
  return nearest && far(nearest) <= reachMm * mmPx ? nearest.id : undefined;
};

/** What was meant by a press that ended at a point. */
export const released = (press: Press, end: Point, plates: Plates, mmPx: number): Release => {
  const to = plateUnder(end, plates, mmPx);
  if (to && to !== press.station) return { kind: "lay", from: press.station, to };
  const farPx = Math.hypot(end.x - press.at.x, end.y - press.at.y);
  return to || farPx <= wobbleMm * mmPx ? { kind: "tap", station: press.station } : { kind: "missed" };
};
