import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };

/** What a cable is longer than its way along the walls. */
export const cableRun = sourced({
  /** From the run in floor or ceiling to an accessory, and the slack left in its box. */
  accessoryDropM: [1, practice],
  /** Bends, and ways round what stands in the way. */
  spareFraction: [0.1, practice],
});
