import type { StationId } from "../../board/ids.ts";
import type { Text } from "../../text/text.schema.ts";
import type { Plan } from "../scenario.schema.ts";
import type { Draw } from "./draw.ts";
import type { Draft } from "./draft.ts";

const rooms: readonly Text[] = [
  { en: "Kitchen", pl: "Kuchnia" },
  { en: "Living room", pl: "Salon" },
  { en: "Hall", pl: "Hol" },
  { en: "Study", pl: "Gabinet" },
  { en: "Bedroom", pl: "Sypialnia" },
  { en: "Dining room", pl: "Jadalnia" },
  { en: "Playroom", pl: "Pokój dzieci" },
  { en: "Workroom", pl: "Pracownia" },
];
const lanes = [
  "Thistle Lane",
  "Weir Row",
  "Candle Street",
  "Orchard Rise",
  "Ferry Hill",
  "Gable Yard",
] as const;

interface Point {
  x: number;
  y: number;
}
type Wall = Plan["walls"][number];

/** How far the floor runs lie from the outer walls, in steps of the plan. */
const inset = { left: 14, right: 16, top: 20, bottom: 14 };

/**
 * A house of our own with the stations of a draft in it: four rooms, a run under the floor around it that passes the
 * outer stations, and one through the middle that passes the inner ones. Turned over in any of four ways.
 */
export function drawHouse(draw: Draw, way: StationId, draft: Pick<Draft, "outer" | "inner" | "routeClass">) {
  const width = draw.between(108, 120);
  const height = draw.between(88, 96);
  const split = { x: draw.between(44, 52), y: draw.between(50, 54) };
  const [left, right] = [inset.left, width - inset.right];
  const [top, bottom] = [inset.top, height - inset.bottom];
  const middle = Math.round(height / 2) - draw.between(0, 3);
  const firstX = draw.between(28, 34);
  const outerPlaces: Point[] = [
    { x: firstX, y: top },
    { x: right, y: top },
    { x: draw.between(64, 70), y: bottom },
  ];
  const gap = (right - firstX - 8) / Math.max(1, draft.inner.length);
  const innerPlaces = draft.inner.map((_, at) => ({ x: Math.round(firstX + 14 + gap * at), y: middle }));
  const [isMirrored, isUpsideDown] = [draw.between(0, 1) === 1, draw.between(0, 1) === 1];
  const turned = ({ x, y }: Point): Point => ({
    x: isMirrored ? width - x : x,
    y: isUpsideDown ? height - y : y,
  });
  const run =
    (routeClass: string, as?: Wall["as"]) =>
    ([x1, y1, x2, y2]: readonly [number, number, number, number]): Wall => ({
      from: turned({ x: x1, y: y1 }),
      to: turned({ x: x2, y: y2 }),
      routeClass,
      ...(as ? { as } : {}),
    });
  const box = (x1: number, y1: number, x2: number, y2: number) =>
    [
      [x1, y1, x2, y1],
      [x2, y1, x2, y2],
      [x2, y2, x1, y2],
      [x1, y2, x1, y1],
    ] as const;
  const walls: Wall[] = [
    ...box(0, 0, width, height).map(run("wall")),
    // Each inner wall leaves a door.
    ...(
      [
        [split.x, 0, split.x, split.y - 18],
        [split.x, split.y - 4, split.x, height - 22],
        [split.x, height - 6, split.x, height],
        [0, split.y, 18, split.y],
        [34, split.y, width - 34, split.y],
        [width - 8, split.y, width, split.y],
      ] as const
    ).map(run("wall")),
    ...box(left, top, right, bottom).map(run("floor", "floor")),
    ...(draft.inner.length === 0
      ? []
      : (
          [
            [firstX, top, firstX, middle],
            [firstX, middle, right, middle],
          ] as const
        ).map(run("floor", "floor"))),
  ];
  const names = draw.some(rooms, 4);
  const areas = [
    [0, 0, split.x, split.y],
    [split.x, 0, width, split.y],
    [0, split.y, split.x, height],
    [split.x, split.y, width, height],
  ] as const;
  const plan: Plan = {
    width,
    height,
    rooms: areas.flatMap(([x1, y1, x2, y2], at) => {
      const name = names[at];
      const [a, b] = [turned({ x: x1, y: y1 }), turned({ x: x2, y: y2 })];
      const corner = { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y) };
      return name ? [{ name, ...corner, width: x2 - x1, height: y2 - y1 }] : [];
    }),
    routeClasses: { floor: draft.routeClass, wall: { method: "C", depthMm: 15 } },
    walls,
    places: [
      { station: way, at: turned({ x: left, y: bottom }) },
      ...draft.outer.map((station, at) => ({ station, at: turned(outerPlaces[at] ?? { x: left, y: top }) })),
      ...draft.inner.map((station, at) => ({
        station,
        at: turned(innerPlaces[at] ?? { x: left, y: middle }),
      })),
    ],
  };
  const [number, lane] = [draw.between(2, 48), draw.from(lanes)];
  return { plan, place: { en: `${number} ${lane}, Tollbarrow`, pl: `${lane} ${number}, Tollbarrow` } };
}
