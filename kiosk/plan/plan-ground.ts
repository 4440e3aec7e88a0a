import type { AttemptView, BoardFace, FaceStation } from "../../shared/protocol/bench-view.ts";
import { lanePitchMm } from "../geometry/cable-width.ts";
import { fitPlan, type PlanFit, toPx } from "../geometry/fit-plan.ts";
import { type Plate, layPlates } from "../geometry/lay-plates.ts";
import type { Point, Rect } from "../geometry/point.ts";

export interface PlanGround {
  fit: PlanFit;
  area: Rect;
  plates: Plate[];
  stations: FaceStation[];
  /** Where the middle of a cable may lie within the walls round the house. */
  house: Rect | undefined;
}

/** Half a wall and half the widest cable. */
const offWallMm = 2.95;

/** The area within the outermost walls; undefined where a station stands outside them. */
const houseOf = (
  { walls, places }: AttemptView["scenario"]["plan"],
  fit: PlanFit,
  mmPx: number,
): Rect | undefined => {
  const ends = walls.flatMap(({ from, to, as = "wall" }) => (as === "wall" ? [from, to] : []));
  const [xs, ys] = [ends.map(({ x }) => x), ends.map(({ y }) => y)];
  const a = { x: Math.min(...xs), y: Math.min(...ys) };
  const b = { x: Math.max(...xs), y: Math.max(...ys) };
  const isIn = ({ x, y }: Point) => x >= a.x && x <= b.x && y >= a.y && y <= b.y;
  if (!places.every(({ at }) => isIn(at))) return undefined;
  const [from, to] = [toPx(fit, a), toPx(fit, b)];
  const off = offWallMm * mmPx;
  return {
    x: from.x + off,
    y: from.y + off,
    width: to.x - from.x - 2 * off,
    height: to.y - from.y - 2 * off,
  };
};

/**
 * The plan without its cables: how it lies in an area of the screen, and where its plates stand. A station that
 * the plan gives no place to, but that a cable leads to, stands along the lower edge.
 */
export const planGround = (
  scenario: AttemptView["scenario"],
  face: BoardFace,
  stray: readonly string[],
  area: { width: number; height: number },
  mmPx: number,
  sizeOf: (station: FaceStation) => { width: number; height: number; headPx: number },
): PlanGround => {
  const { plan } = scenario;
  // Room for a lane round the outermost plates, less where the screen is short.
  const marginPx = Math.min(lanePitchMm * mmPx * 1.57, area.height * 0.13, area.width * 0.13);
  const fit = fitPlan(plan, area, marginPx * 0.36);
  const placed = new Map<string, Point>(plan.places.map(({ station, at }) => [station, at]));
  const stations = face.stations.filter(({ id }) => placed.has(id) || stray.includes(id));
  const strays = stations.filter(({ id }) => !placed.has(id));
  const inner: Rect = {
    x: marginPx,
    y: marginPx,
    width: Math.max(0, area.width - 2 * marginPx),
    height: Math.max(0, area.height - 2 * marginPx),
  };
  const wishes = stations.map((station) => {
    const at = placed.get(station.id);
    const nth = strays.indexOf(station);
    return {
      id: station.id,
      ...sizeOf(station),
      room: at && roomRound(plan, fit, at),
      centre: at
        ? toPx(fit, at)
        : { x: (area.width * (nth + 0.5)) / Math.max(1, strays.length), y: area.height },
    };
  });
  const outer: Rect = {
    x: 2,
    y: 2,
    width: Math.max(0, area.width - 4),
    height: Math.max(0, area.height - 4),
  };
  const headPx = new Map(stations.map((station) => [station.id as string, sizeOf(station).headPx]));
  const plates = layPlates(wishes, inner, lanePitchMm * mmPx * 1.9, outer).map((plate) => ({
    ...plate,
    headPx: headPx.get(plate.id) ?? 0,
  }));
  return { fit, area: { x: 0, y: 0, ...area }, plates, stations, house: houseOf(plan, fit, mmPx) };
};

/** The room of the plan that a place lies in, in pixels. */
const roomRound = (plan: AttemptView["scenario"]["plan"], fit: PlanFit, at: Point): Rect | undefined => {
  const room = plan.rooms.find(
    ({ x, y, width, height }) => at.x >= x && at.x <= x + width && at.y >= y && at.y <= y + height,
  );
  if (!room) return undefined;
  const { x, y } = toPx(fit, room);
  return { x, y, width: room.width * fit.scaleX, height: room.height * fit.scaleY };
};
