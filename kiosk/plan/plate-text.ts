import type { FaceStation } from "../../shared/protocol/bench-view.ts";
import { stationMark, stationName } from "../wiring/place-name.ts";
import type { PlanInput } from "./plan-input.ts";
import { isNamed, plateSizeMm } from "./plate-size.ts";

const mostWidthMm = 27;
const besideNameMm = 3;

/**
 * What is written on a plate, and its size in pixels: it is as wide as the name on it, as long as that is not too
 * wide; else it has its symbol and number.
 */
export const plateText = (
  station: FaceStation,
  { mmPx, captionPx, words, measure }: Pick<PlanInput, "mmPx" | "captionPx" | "words" | "measure">,
): { text: string; size: { width: number; height: number } } => {
  const { widthMm, heightMm } = plateSizeMm(station);
  const height = heightMm * mmPx;
  const baseWidth = widthMm * mmPx;
  const name = stationName(station, words);
  const wanted = measure(name, captionPx, true) + mmPx * besideNameMm;
  return isNamed(station.kind) && wanted <= mostWidthMm * mmPx
    ? { text: name, size: { width: Math.max(baseWidth, wanted), height } }
    : { text: stationMark(station), size: { width: baseWidth, height } };
};
