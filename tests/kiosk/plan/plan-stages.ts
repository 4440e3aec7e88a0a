import { sizesFor } from "../../../kiosk/panel/sizes.ts";
import { choosePanel } from "../../../kiosk/panel/panel-profile.ts";

const panels = [
  { width: 800, height: 480, stage: { width: 570, height: 381 } },
  { width: 480, height: 800, stage: { width: 464, height: 430 } },
  { width: 1280, height: 800, stage: { width: 746, height: 617 } },
  { width: 800, height: 1280, stage: { width: 780, height: 810 } },
];

/**
 * The four panels the bench is made for, with the least area that the plan has on each in Wire: on the large one upright
 * that is with a voice that reads aloud.
 */
export const planStages = panels.map(({ width, height, stage }) => ({
  panel: `${width}x${height}`,
  width,
  height,
  stage,
  sizes: sizesFor(choosePanel("", width, height), false),
}));
