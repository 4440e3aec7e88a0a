import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const handbook: Source = {
  kind: "guidance",
  document: "IET Guidance Note 3",
  clause: "ring final circuit continuity (BS 7671 643.2.1)",
  checked: "secondary copy",
};
const recomputed: Source = { ...handbook, checked: "recomputed" };

/** What the three-step ring test is judged by. */
export const ringTestLimits = sourced({
  /** End-to-end line and neutral agree within this. */
  r1RnToleranceOhm: [0.05, handbook],
  /** Handbook figure for 2.5/1.5 mm². The BS EN 60228 maxima give 12.1 / 7.41 = 1.63, so 1.6 to 1.7 is accepted. */
  r2R1Ratio: [1.67, handbook],
  /** A reading below half or above twice what the lengths give was not taken where it is said to have been. */
  leastPlausibleFraction: [0.5, { kind: "common practice, no source" }],
  leastR2R1Ratio: [1.6, recomputed],
  mostR2R1Ratio: [1.7, recomputed],
});
