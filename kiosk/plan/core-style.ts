import type { Core } from "../../shared/board/station-kinds.ts";
import type { Colour } from "../panel/palette.ts";

/** How a core is drawn: its colour on a ground, and a line pattern that tells it apart without colour. */
export interface CoreStyle {
  colour: Colour;
  ground: Colour;
  /** Dashes in widths of the core; empty for an unbroken line. */
  dashes: readonly number[];
}

export const coreStyles: Record<Core, CoreStyle> = {
  brown: { colour: "brown", ground: "brown", dashes: [] },
  blue: { colour: "blue", ground: "plate", dashes: [4.5, 1.6] },
  earth: { colour: "green", ground: "yellow", dashes: [1.5, 1.5] },
  black: { colour: "black", ground: "plate", dashes: [7, 1.5, 1.5, 1.5] },
  grey: { colour: "grey", ground: "plate", dashes: [0.8, 1.2] },
};
