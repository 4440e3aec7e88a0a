import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { calculationsPage } from "./calculations-page.ts";
import { leadLabelSheets, stationLabelSheets } from "./label-sheets.ts";
import { layout } from "./layout.ts";
import { panel } from "./panel.ts";
import { schematic } from "./schematic.ts";
import { partsAndPins, wiringList } from "./tables.ts";

/** A page of the build guide that is drawn from a board description; `path` is within the board's own folder. */
export interface GuidePage {
  path: string;
  content: string;
}

/** All that the build guide draws from a board description. The same description gives the same bytes. */
export function drawGuide(board: BoardDescription): GuidePage[] {
  const numbered = (name: string, sheets: string[]): GuidePage[] =>
    sheets.map((content, index) => ({ path: `${name}-${index + 1}.svg`, content }));
  const drawnLayout = layout(board);
  return [
    ...(drawnLayout === undefined ? [] : [{ path: "layout.svg", content: drawnLayout }]),
    { path: "schematic.svg", content: schematic(board) },
    { path: "parts-and-pins.md", content: partsAndPins(board) },
    { path: "calculations.md", content: calculationsPage(board) },
    { path: "panel.svg", content: panel(board) },
    { path: "wiring-list.md", content: wiringList(board) },
    ...numbered("lead-labels", leadLabelSheets(board)),
    ...numbered("station-labels", stationLabelSheets(board)),
  ];
}
