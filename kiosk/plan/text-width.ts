import { isTypefaceThere } from "../panel/typeface.svelte.ts";

const measured = new Map<string, number>();
const mostMeasured = 2_000;
let pen: CanvasRenderingContext2D | null | undefined;

/** How wide a text is in the kiosk's typeface, in pixels. */
export const textWidth = (text: string, fontPx: number, isBold: boolean): number => {
  // Read so that whoever measures measures again when the typeface comes.
  const isThere = isTypefaceThere();
  pen ??= document.createElement("canvas").getContext("2d");
  const font = `${isBold ? "700" : "400"} ${fontPx}px "Atkinson Hyperlegible", sans-serif`;
  const key = `${isThere} ${font} ${text}`;
  const known = measured.get(key);
  if (known !== undefined) return known;
  if (!pen) return text.length * fontPx * 0.6;
  pen.font = font;
  const { width } = pen.measureText(text);
  if (measured.size > mostMeasured) measured.clear();
  measured.set(key, width);
  return width;
};
