import { type PanelProfile, pxPerMm } from "./panel-profile.ts";

/** Cap height of Atkinson Hyperlegible as a part of its font size: 668 of 1000 units in its OS/2 table. */
export const capHeightShare = 0.668;

/** Everything the bench screen measures with, in pixels of its panel. */
export interface Sizes {
  mmPx: number;
  /** Font size whose capitals are 3.5 mm high. */
  bodyPx: number;
  /** Font size whose capitals are 2.8 mm high; nothing is smaller. */
  captionPx: number;
  /** The one thing to do next. */
  mainKeyPx: number;
  /** Steps, floor keys and the rest. */
  keyPx: number;
  /** Nothing to be touched is smaller. */
  leastKeyPx: number;
  /** A panel too small for a side panel beside the plan. */
  isSmall: boolean;
}

const largeFactor = 1.2;

/** Sizes for a panel, in ordinary or large letters. Panels under 180 mm wide get the 13 mm keys. */
export const sizesFor = (panel: PanelProfile, isLarge: boolean): Sizes => {
  const mmPx = pxPerMm(panel);
  const isSmall = panel.widthPx / mmPx < 180;
  const letters = isLarge ? largeFactor : 1;
  return {
    mmPx,
    bodyPx: ((3.5 * mmPx) / capHeightShare) * letters,
    captionPx: ((2.8 * mmPx) / capHeightShare) * letters,
    mainKeyPx: 20 * mmPx,
    keyPx: (isSmall ? 13 : 15) * mmPx,
    leastKeyPx: 10 * mmPx,
    isSmall,
  };
};
