import { type CableId, type EntryId, stationOf } from "../../shared/board/ids.ts";
import type { BoardFace, SensedCable } from "../../shared/protocol/bench-view.ts";
import { cableWidthMm, lanePitchMm } from "../geometry/cable-width.ts";
import { toPx } from "../geometry/fit-plan.ts";
import { guideFromPlates } from "../geometry/guide-from-plates.ts";
import { centreOf, type Point } from "../geometry/point.ts";
import { routeCables } from "../geometry/route-cables.ts";
import type { PlateHalf, RouteOrder } from "../geometry/route-field.ts";
import { heaviestAt } from "../notes/heaviest-at.ts";
import type { Weight } from "../notes/weight.ts";
import { coresOf, type DrawnCore, isCrossed } from "./cores-of.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";
import { isTwoSided } from "./plate-text.ts";

/** A cable as it lies on the plan. */
export interface DrawnCable {
  cable: SensedCable;
  line: Point[];
  cores: DrawnCore[];
  widthPx: number;
  weight: Weight | undefined;
  /** A core is missing or crossed, or the cable is touched: then its letters say what is where. */
  hasLetters: boolean;
  /** What its label may say, the longest first. */
  texts: string[];
  /** What all this was made from, of the cable and around it: where both are the same it is the same drawing. */
  looks: readonly unknown[];
  around: readonly unknown[];
}

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((part, i) => part === b[i]);

/** What a cable carries against what is asked of it, such as "27 A ≥ 20 A"; empty where it is not known. */
export const carriesText = ({ carries }: SensedCable, words: PlanInput["words"]): string =>
  carries
    ? `${words.t("unit.A", { n: carries.ratingA })} ${carries.isBelow ? "<" : "≥"} ${words.t("unit.A", { n: carries.neededA })}`
    : "";

const textsOf = (cable: SensedCable, { words, marked }: PlanInput): string[] => {
  const size = cable.csaMm2 === undefined ? words.t("cable.no-size") : words.number(cable.csaMm2);
  const mark = marked?.get(cable.id);
  if (mark !== undefined) return [`${size} · ${mark}`, `≠ ${size}`];
  const carries = carriesText(cable, words);
  return carries === "" ? [size] : [`${size} · ${carries}`, size];
};

/** The half of a plate with two that an entry is on. */
const halfOf = (entry: EntryId, face: BoardFace): PlateHalf | undefined => {
  const station = face.stations.find(({ id }) => id === stationOf(entry));
  if (!station || !isTwoSided(station)) return undefined;
  return station.entries.find(({ id }) => id === entry)?.side === "load" ? "right" : "left";
};

/** How cables are laid afresh: which come first, and how much room each wants for its label, 1 for what it needs. */
export interface LayBy {
  first: RouteOrder;
  room: number;
  /** Distance of the lanes, 1 for what is usual. */
  pitch: number;
}

/** The ways of the cables; those in `kept` stay where they are as long as the others find a lane beside them. */
const linesOf = (
  { attempt, face, mmPx, captionPx }: PlanInput,
  ground: PlanGround,
  kept: ReadonlyMap<CableId, Point[]>,
  { first, room, pitch }: LayBy,
): ReadonlyMap<CableId, Point[]> => {
  if (attempt.cables.every(({ id }) => kept.has(id))) return kept;
  const lanePx = lanePitchMm * mmPx;
  const centres = new Map(
    ground.plates.map(({ headPx = 0, ...plate }) => {
      const { x, y } = centreOf(plate);
      return [plate.id, { x, y: y + headPx / 2 }];
    }),
  );
  return routeCables(
    {
      ...ground.area,
      pitchPx: lanePx * pitch,
      plates: ground.plates,
      house: ground.house,
      first,
      least: { levelPx: captionPx * 2.4, uprightPx: captionPx * 1.5 * room },
    },
    attempt.cables.map(({ id, from, to, path }) => {
      const route = path.map((point) => toPx(ground.fit, point));
      return {
        id,
        from: stationOf(from),
        to: stationOf(to),
        fromHalf: halfOf(from, face),
        toHalf: halfOf(to, face),
        guide: guideFromPlates(route, centres.get(stationOf(from)), centres.get(stationOf(to)), lanePx),
      };
    }),
    kept,
  ) as Map<CableId, Point[]>;
};

/**
 * The cables on a plan. What has not changed since `last` on the same ground is the same thing again, so that it is
 * not drawn anew; where nothing has changed, the list is.
 */
export const drawCables = (
  input: PlanInput,
  ground: PlanGround,
  last: readonly DrawnCable[],
  layBy: LayBy = { first: "shortest", room: 1, pitch: 1 },
): readonly DrawnCable[] => {
  const { attempt, face, mmPx, words, marked, isTypefaceThere } = input;
  const before = new Map(last.map((drawn) => [drawn.cable.id, drawn]));
  const lines = linesOf(input, ground, new Map(last.map(({ cable, line }) => [cable.id, line])), layBy);
  const heaviest = heaviestAt(attempt.verdict);
  const drawn = attempt.cables.flatMap((cable): DrawnCable[] => {
    const line = lines.get(cable.id);
    if (!line) return [];
    const weight = heaviest.get(cable.id);
    const isPicked = cable.id === input.pickedCable;
    const around = [line, weight, isPicked, marked?.get(cable.id), words.language, mmPx, isTypefaceThere];
    const known = before.get(cable.id);
    if (known?.cable === cable && isSame(known.around, around)) return [known];
    const texts = textsOf(cable, input);
    const joins = cable.conductors.map(({ from, to }) => `${from}~${to}`).join();
    const looks = [cable.csaMm2, cable.carries?.isBelow, cable.isAsFound, cable.isUnsaved, joins, ...texts];
    if (known && isSame(known.around, around) && isSame(known.looks, looks)) return [known];
    const widthPx = cableWidthMm(cable.csaMm2) * mmPx;
    const cores = coresOf(cable, face);
    const hasLetters = isPicked || cores.some((core) => !core.isThere || isCrossed(core));
    return [{ cable, line, cores, widthPx, weight, hasLetters, texts, looks, around }];
  });
  return isSame(drawn, last) ? last : drawn;
};
