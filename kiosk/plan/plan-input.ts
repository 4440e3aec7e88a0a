import type { CableId } from "../../shared/board/ids.ts";
import type { AttemptView, BoardFace } from "../../shared/protocol/bench-view.ts";
import type { Words } from "../text/words.svelte.ts";

/** What speaks the language of the screen. */
export type Speaker = Pick<Words, "t" | "of" | "number" | "language">;

/** How wide a text is in the kiosk's typeface, in pixels. */
export type Measure = (text: string, fontPx: number, isBold: boolean) => number;

/** All that the plan of the house is drawn from; lengths in pixels of the panel. */
export interface PlanInput {
  attempt: AttemptView;
  face: BoardFace;
  area: { width: number; height: number };
  mmPx: number;
  captionPx: number;
  /** The cable that is touched. */
  pickedCable?: CableId | undefined;
  /** What else a cable says on its label. */
  marked?: ReadonlyMap<string, string>;
  words: Speaker;
  measure: Measure;
  /** True once texts have the widths of the kiosk's typeface: labels wait for it. */
  isTypefaceThere: boolean;
}
