import { isTypefaceThere } from "../panel/typeface.svelte.ts";

let pen: CanvasRenderingContext2D | null | undefined;

/** How wide a text is in the kiosk's typeface, in pixels. */
export const textWidth = (text: string, fontPx: number, isBold: boolean): number => {
  // Read so that whoever measures measures again when the typeface comes.
  void isTypefaceThere();
  pen ??= document.createElement("canvas").getContext("2d");
  if (!pen) return text.length * fontPx * 0.6;
  pen.font = `${isBold ? "700" : "400"} ${fontPx}px "Atkinson Hyperlegible", sans-serif`;
  return pen.measureText(text).width;
};
