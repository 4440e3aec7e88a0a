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
/** A drag that ends so near to a plate ends on it. */
const reachMm = 2;

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

/** The plate that something held over a point would be put on. */
export const plateUnder = (point: Point, plates: Plates, mmPx: number): string | undefined =>
  plates.find((plate) => distanceToRect(point, plate) <= reachMm * mmPx)?.id;
