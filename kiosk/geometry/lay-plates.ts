import { platesInRows } from "./plates-in-rows.ts";
import { centreOf, overlaps, type Point, type Rect } from "./point.ts";
import { type Apart, type Bounds, spreadAlong } from "./spread-along.ts";

export interface PlateWish {
  id: string;
  centre: Point;
  width: number;
  height: number;
  /** The room it stands in. */
  room?: Rect | undefined;
}

export interface Plate extends Rect {
  id: string;
  /** So much of its top is writing above the plate itself. */
  headPx?: number;
}

type Hold = "whole" | "centre" | "free";

/** What a try gives up, in gaps that a plate may be moved aside for it. */
const cost = { gap: 1.2, hold: { whole: 0, centre: 0.5, free: 1 } };

/**
 * What is tried in turn: how firmly a plate is kept in its room, and how much of the wanted gap is kept across and
 * down. Cables need lanes to run in; but plates must not overlap.
 */
const tries: readonly { hold: Hold; across: number; down: number }[] = [
  [
    { across: 1, down: 1 },
    { across: 1, down: 0.6 },
    { across: 0.6, down: 1 },
    { across: 0.6, down: 0.6 },
    { across: 1, down: 0.3 },
    { across: 0.3, down: 1 },
    { across: 0.6, down: 0.3 },
    { across: 0.3, down: 0.6 },
    { across: 0.3, down: 0.3 },
  ],
  [
    { across: 1, down: 0 },
    { across: 0.6, down: 0 },
    { across: 0.3, down: 0 },
    { across: 0, down: 0 },
  ],
].flatMap((gaps) =>
  (["whole", "centre", "free"] as const).flatMap((hold) => gaps.map((gap) => ({ hold, ...gap }))),
);

/**
 * Where the plates of the stations go: as near to their places on the plan as they can without touching one
 * another, all inside the area, in pixels. What is left of another on the plan stays left of it or as it was above
 * or below it, and each stays in its room while there is room. In a crowded area the gap is given up before a
 * plate stands far from its place or overlaps another, and then the places: they stand in rows, in all the room there is round the area.
 */
export const layPlates = (
  wishes: readonly PlateWish[],
  area: Rect,
  gapPx: number,
  outer: Rect = area,
): Plate[] => {
  let best: { plates: Plate[]; price: number } | undefined;
  for (const { hold, across, down } of tries) {
    const given = (1 - across + (1 - down)) * cost.gap + cost.hold[hold];
    if (best && given >= best.price) continue;
    // Half a pixel of air, so that plates that touch do not count as overlapping.
    const [gapX, gapY] = [gapPx * across + 0.5, gapPx * down + 0.5];
    const plates = hasRoomFor(wishes, area, gapX, gapY) ? settle(wishes, area, hold, gapX, gapY) : undefined;
    if (!plates) continue;
    // Without rooms nothing says how far is too far.
    if (!wishes.every(({ room }) => room)) return plates;
    const price = given + furthestPx(wishes, plates) / gapPx;
    if (!best || price < best.price) best = { plates, price };
  }
  if (best) return best.plates;
  const plates = wishes.map(({ id, centre, width, height }) => ({ id, ...centre, width, height }));
  return platesInRows(plates, outer);
};

/** How far from its place the plate stands that is moved furthest. */
const furthestPx = (wishes: readonly PlateWish[], plates: readonly Plate[]): number =>
  Math.max(
    0,
    ...plates.map((plate, i) => {
      const at = centreOf(plate);
      const { x, y } = wishes[i]?.centre ?? at;
      return Math.hypot(at.x - x, at.y - y);
    }),
  );

/** False where the plates, each with its gap, cover more than the area with one gap: then no place is found for all. */
const hasRoomFor = (wishes: readonly PlateWish[], area: Rect, gapX: number, gapY: number): boolean =>
  wishes.reduce((sum, { width, height }) => sum + (width + gapX) * (height + gapY), 0) <=
  (area.width + gapX) * (area.height + gapY);

interface Pair extends Apart {
  axis: "x" | "y";
  isTurned: boolean;
  /** The same pair told apart along the other axis, and how much room it has there. */
  other: Apart;
  otherSlack: number;
}

const pairsOf = (wishes: readonly PlateWish[], gapX: number, gapY: number): Pair[] =>
  wishes.flatMap((a, i) =>
    wishes.slice(i + 1).map((b, k): Pair => {
      const j = i + 1 + k;
      const byX = (a.width + b.width) / 2 + gapX;
      const byY = (a.height + b.height) / 2 + gapY;
      const alongX = b.centre.x < a.centre.x ? { before: j, after: i } : { before: i, after: j };
      const alongY = b.centre.y < a.centre.y ? { before: j, after: i } : { before: i, after: j };
      const slackX = Math.abs(b.centre.x - a.centre.x) - byX;
      const slackY = Math.abs(b.centre.y - a.centre.y) - byY;
      const x = { ...alongX, by: byX };
      const y = { ...alongY, by: byY };
      return slackX >= slackY
        ? { axis: "x", ...x, isTurned: false, other: y, otherSlack: slackY }
        : { axis: "y", ...y, isTurned: false, other: x, otherSlack: slackX };
    }),
  );

const boundsOf = ({ width, height, room }: PlateWish, area: Rect, hold: Hold): { x: Bounds; y: Bounds } => {
  const within = (at: number, length: number, half: number): Bounds =>
    length < 2 * half
      ? { least: at + length / 2, most: at + length / 2 }
      : { least: at + half, most: at + length - half };
  const x = within(area.x, area.width, width / 2);
  const y = within(area.y, area.height, height / 2);
  if (hold === "free" || !room) return { x, y };
  const meet = (a: Bounds, b: Bounds): Bounds => {
    const least = Math.max(a.least, b.least);
    return { least, most: Math.max(least, Math.min(a.most, b.most)) };
  };
  const isWhole = hold === "whole";
  return {
    x: meet(x, within(room.x, room.width, isWhole ? width / 2 : 0)),
    y: meet(y, within(room.y, room.height, isWhole ? height / 2 : 0)),
  };
};

/** Tells every pair apart along one axis, and turns pairs to the other axis where a row is too long for the area. */
const settle = (
  wishes: readonly PlateWish[],
  area: Rect,
  hold: Hold,
  gapX: number,
  gapY: number,
): Plate[] | undefined => {
  const pairs = pairsOf(wishes, gapX, gapY);
  const bounds = wishes.map((wish) => boundsOf(wish, area, hold));
  const along = (axis: "x" | "y") =>
    spreadAlong(
      wishes.map(({ centre }) => centre[axis]),
      bounds.map((one) => one[axis]),
      pairs.filter((pair) => pair.axis === axis),
    );
  for (let turn = 0; turn <= pairs.length; turn += 1) {
    const x = along("x");
    const y = along("y");
    if ("centres" in x && "centres" in y) {
      const plates = wishes.map(({ id, width, height }, i) => ({
        id,
        x: (x.centres[i] ?? 0) - width / 2,
        y: (y.centres[i] ?? 0) - height / 2,
        width,
        height,
      }));
      return plates.some((a, i) => plates.slice(i + 1).some((b) => overlaps(a, b))) ? undefined : plates;
    }
    const tooTight = new Set([x, y].flatMap((one) => ("tooTight" in one ? one.tooTight : [])));
    const loosest = pairs
      .filter((pair) => tooTight.has(pair) && !pair.isTurned)
      .sort((a, b) => b.otherSlack - a.otherSlack)[0];
    if (!loosest) return undefined;
    const { axis, before, after, by, other } = loosest;
    Object.assign(loosest, other, {
      axis: axis === "x" ? "y" : "x",
      isTurned: true,
      other: { before, after, by },
    });
  }
  return undefined;
};
