import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const definition: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "Part 2, extra-low voltage",
  checked: "secondary copy",
};
const basic: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "414.1 to 414.4",
  checked: "secondary copy",
};

/** Extra-low voltage: its ceiling, and up to where SELV needs no basic protection. */
export const selvLimits = sourced({
  ceilingAcV: [50, definition],
  ceilingDcV: [120, definition],
  dryAcV: [25, basic],
  dryDcV: [60, basic],
  otherAcV: [12, basic],
  otherDcV: [30, basic],
});
