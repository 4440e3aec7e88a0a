import type { CableId } from "../../shared/board/ids.ts";
import type { SensedCable } from "../../shared/protocol/bench-view.ts";
import { cableWidthMm, lanePitchMm } from "../geometry/cable-width.ts";
import { toPx } from "../geometry/fit-plan.ts";
import type { Point } from "../geometry/point.ts";
import { routeCables } from "../geometry/route-cables.ts";
import { heaviestAt } from "../notes/heaviest-at.ts";
import type { Weight } from "../notes/weight.ts";
import { coresOf, type DrawnCore } from "./cores-of.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";

/** A cable as it lies on the plan. */
export interface DrawnCable {
  cable: SensedCable;
  line: Point[];
  cores: DrawnCore[];
  widthPx: number;
  weight: Weight | undefined;
  /** What its label may say, the longest first. */
  texts: string[];
  /** What all this was made from: a cable with the same marks is the same drawing. */
  marks: readonly unknown[];
}

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((part, i) => part === b[i]);

const textsOf = ({ csaMm2, share }: SensedCable, { words }: PlanInput): string[] => {
  const size = csaMm2 === undefined ? words.t("cable.no-size") : words.number(csaMm2);
  const percent = share === undefined ? "" : words.t("unit.percent", { n: Math.round(share * 100) });
  return percent === "" ? [size] : [`${size} · ${percent}`, size];
};

/** The ways of the cables; those in `kept` stay where they are as long as the others find a lane beside them. */
const linesOf = (
  { attempt, mmPx }: PlanInput,
  ground: PlanGround,
  kept: ReadonlyMap<string, Point[]>,
): Map<CableId, Point[]> =>
  routeCables(
    { ...ground.area, pitchPx: lanePitchMm * mmPx, plates: ground.plates },
    attempt.cables.map(({ id, from, to, path }) => ({
      id,
      from: from.slice(0, from.indexOf(".")),
      to: to.slice(0, to.indexOf(".")),
      guide: path.map((point) => toPx(ground.fit, point)),
    })),
    kept,
  ) as Map<CableId, Point[]>;

/**
 * The cables on a plan. What has not changed since `last` on the same ground is the same thing again, so that it is
 * not drawn anew; where nothing has changed, the list is.
 */
export const drawCables = (
  input: PlanInput,
  ground: PlanGround,
  last: readonly DrawnCable[],
): readonly DrawnCable[] => {
  const { attempt, face, mmPx, words, isTypefaceThere } = input;
  const before = new Map(last.map((drawn) => [drawn.cable.id, drawn]));
  const lines = linesOf(input, ground, new Map(last.map(({ cable, line }) => [cable.id, line])));
  const heaviest = heaviestAt(attempt.verdict);
  const drawn = attempt.cables.flatMap((cable): DrawnCable[] => {
    const line = lines.get(cable.id);
    if (!line) return [];
    const weight = heaviest.get(cable.id);
    const texts = textsOf(cable, input);
    const joins = cable.conductors.map(({ from, to }) => `${from}~${to}`).join();
    const marks = [line, weight, joins, cable.csaMm2, ...texts, words.language, mmPx, isTypefaceThere];
    const known = before.get(cable.id);
    if (known && isSame(known.marks, marks)) return [known];
    const widthPx = cableWidthMm(cable.csaMm2) * mmPx;
    return [{ cable, line, cores: coresOf(cable, face), widthPx, weight, texts, marks }];
  });
  return isSame(drawn, last) ? last : drawn;
};
