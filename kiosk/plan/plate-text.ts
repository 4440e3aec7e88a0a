import type { FaceStation } from "../../shared/protocol/bench-view.ts";
import { stationMark, stationName } from "../wiring/place-name.ts";
import type { PlanInput } from "./plan-input.ts";
import { isNamed, plateSizeMm } from "./plate-size.ts";

/** True for what is fed on one side and feeds on from the other: a connection unit, an isolator, a cooker control. */
export const isTwoSided = ({ entries }: Pick<FaceStation, "entries">): boolean =>
  entries.some(({ side }) => side === "supply") && entries.some(({ side }) => side === "load");

const mostWidthMm = 27;
const besideNameMm = 2;

/**
 * What is written on a plate, and its size in pixels: it is as wide as the name on it, as long as that is not too
 * wide; else it has its symbol and number.
 */
export const plateText = (
  station: FaceStation,
  { mmPx, captionPx, words, measure }: Pick<PlanInput, "mmPx" | "captionPx" | "words" | "measure">,
): { text: string; size: { width: number; height: number; headPx: number } } => {
  const { widthMm, heightMm } = plateSizeMm(station);
  // Above a plate with two sides stands which is which.
  const headPx = isTwoSided(station) ? captionPx : 0;
  const height = heightMm * mmPx + headPx;
  const baseWidth = widthMm * mmPx;
  const name = stationName(station, words);
  const wanted = measure(name, captionPx, true) + mmPx * besideNameMm;
  return isNamed(station.kind) && wanted <= mostWidthMm * mmPx
    ? { text: name, size: { width: Math.max(baseWidth, wanted), height, headPx } }
    : { text: stationMark(station), size: { width: baseWidth, height, headPx } };
};
