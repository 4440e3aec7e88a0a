import type { PlanZone } from "../../shared/protocol/bench-view.ts";
import { toPx } from "../geometry/fit-plan.ts";
import type { LabelWish } from "../geometry/lay-labels.ts";
import type { Rect } from "../geometry/point.ts";
import { isTextKey } from "../text/is-text-key.ts";
import type { PlanGround } from "./plan-ground.ts";
import type { PlanInput } from "./plan-input.ts";

/** A run of a zone as it is drawn: a band along it. */
export interface ZoneBand extends Rect {
  kind: PlanZone["kind"];
}

const halfBandMm = 4.2;

/** Bands along the runs that lie in insulation or in a metal-framed wall, in pixels. */
export const drawZones = ({ attempt, mmPx }: PlanInput, { fit }: PlanGround): ZoneBand[] =>
  attempt.zones.flatMap(({ kind, pieces }) =>
    pieces.map(({ from, to }) => {
      const [a, b] = [toPx(fit, from), toPx(fit, to)];
      const half = halfBandMm * mmPx;
      return {
        kind,
        x: Math.min(a.x, b.x) - half,
        y: Math.min(a.y, b.y) - half,
        width: Math.abs(a.x - b.x) + 2 * half,
        height: Math.abs(a.y - b.y) + 2 * half,
      };
    }),
  );

/** The id of what is written on a zone. */
export const zoneLabelId = (index: number): string => `zone/${index}`;

/** What a zone means, in words. */
export const zoneText = ({ kind, method }: PlanZone, words: PlanInput["words"]): string => {
  if (kind === "metal-frame") return words.t("zone.metal-frame");
  const key = `zone.insulation.${method}`;
  return words.t(isTextKey(key) ? key : "zone.insulation");
};

/** What is written on a zone, once: wishes for one run after the other, the longest first. */
export const zoneWishes = (
  { captionPx, measure, words }: PlanInput,
  { fit }: PlanGround,
  zone: PlanZone,
  id: string,
): LabelWish[] => {
  const runs = zone.pieces
    .map(({ from, to }) => [toPx(fit, from), toPx(fit, to)] as const)
    .toSorted(([a, b], [c, d]) => Math.hypot(d.x - c.x, d.y - c.y) - Math.hypot(b.x - a.x, b.y - a.y));
  const width = measure(zoneText(zone, words), captionPx, false) + captionPx * 0.4;
  // Last of all anywhere between them.
  return [...runs, runs.flat()].map((line) => ({
    id,
    line,
    near: "middle",
    stepPx: captionPx,
    forms: [{ width, height: captionPx * 1.1 }],
  }));
};
