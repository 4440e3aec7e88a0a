import { cableId, type EntryId, type StationId } from "../../board/ids.ts";
import type { Text } from "../../text/text.schema.ts";
import type { CableSpec } from "../../wiring/wiring.schema.ts";
import type { Scenario } from "../scenario.schema.ts";
import type { Draw } from "./draw.ts";

export type ExerciseStation = Scenario["stations"][number];
export type ExerciseLoad = Scenario["loads"][number];

export const station = (id: string): StationId => id as StationId;
export const way = station("way-1");
export const unit = station("fcu-1");

/** A cable of a size between two entries. */
export const cable = (from: string, to: string, csaMm2: number): CableSpec => ({
  from: from as EntryId,
  to: to as EntryId,
  csaMm2,
});
export const idOf = ({ from, to }: CableSpec) => cableId(from, to);

const places: readonly Text[] = [
  { en: "Worktop", pl: "Blat" },
  { en: "Window", pl: "Okno" },
  { en: "Armchair", pl: "Fotel" },
  { en: "Desk", pl: "Biurko" },
  { en: "Shelf", pl: "Półka" },
  { en: "Sideboard", pl: "Kredens" },
  { en: "Corner", pl: "Kąt" },
  { en: "Fireplace", pl: "Kominek" },
  { en: "Stairs", pl: "Schody" },
  { en: "Door", pl: "Drzwi" },
];

/** All socket outlets of a large board. */
export const sockets = [1, 2, 3, 4, 5, 6].map((number) => station(`socket-${number}`));
/** On a large board these are single ones, the others twin. */
const single = new Set([station("socket-5"), station("socket-6")]);

const outlet = (id: StationId, feed: number): ExerciseStation => ({
  id,
  kind: "socket-outlet",
  entries: { feed },
  settings: { gangs: single.has(id) ? 1 : 2 },
});

/** What a board has to have so that exercises can use any of its socket outlets. */
export const allSockets: ExerciseStation[] = sockets.map((id) => outlet(id, 3));

/** Socket outlets with so many entries each, and a name of their own each. */
export function socketOutlets(
  draw: Draw,
  wanted: readonly (readonly [StationId, number])[],
): ExerciseStation[] {
  const names = draw.some(places, wanted.length);
  return wanted.map(([id, feed], at) => {
    const name = names[at];
    return { ...outlet(id, feed), ...(name ? { name } : {}) };
  });
}

/** A way with a circuit-breaker behind an RCD of 30 mA (BS 7671:2018, 411.3.3); its rating is fixed where it is given, and chosen otherwise. */
export const wayOf = (deviceRatingA?: number): ExerciseStation => ({
  id: way,
  kind: "way",
  entries: { feed: 2 },
  settings: {
    deviceStandard: "BS EN 60898",
    deviceCurve: "B",
    rcdMa: 30,
    ...(deviceRatingA === undefined ? {} : { deviceRatingA }),
  },
  ...(deviceRatingA === undefined ? { chosen: ["deviceRatingA" as const] } : {}),
});

/** Powers as plates of such things usually state them: common practice, no source. */
type Named = readonly [powerW: number, name: Text];
const light: readonly [Named, ...Named[]] = [
  [60, { en: "reading lamp", pl: "lampka do czytania" }],
  [150, { en: "television", pl: "telewizor" }],
  [250, { en: "sewing machine", pl: "maszyna do szycia" }],
  [400, { en: "computer", pl: "komputer" }],
  [600, { en: "printer", pl: "drukarka" }],
  [800, { en: "mixer", pl: "mikser" }],
];
const heavy: readonly [Named, ...Named[]] = [
  [1500, { en: "vacuum cleaner", pl: "odkurzacz" }],
  [1800, { en: "heater", pl: "grzejnik" }],
  [2000, { en: "dishwasher", pl: "zmywarka" }],
  [2200, { en: "iron", pl: "żelazko" }],
  [2800, { en: "kettle", pl: "czajnik" }],
];

const loadOf = (id: StationId, [powerW, name]: Named): ExerciseLoad => ({ station: id, powerW, name });
/** What little runs at a point. */
export const lightLoad = (draw: Draw, id: StationId): ExerciseLoad => loadOf(id, draw.from(light));
/** What much runs at a point, `most` watts at most where it is given. */
export function heavyLoad(draw: Draw, id: StationId, mostW = Infinity): ExerciseLoad {
  const [first = heavy[0], ...more] = heavy.filter(([powerW]) => powerW <= mostW);
  return loadOf(id, draw.from([first, ...more]));
}
