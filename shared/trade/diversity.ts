import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const guide: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Table A2 (older numbering 1B), household",
  checked: "secondary copy",
};

/**
 * Diversity allowances for a household. They serve the origin of the installation; within one final circuit only the
 * cooker allowance applies.
 */
export const diversity = sourced({
  lightingFraction: [0.66, guide],
  heatingFullToA: [10, guide],
  heatingRestFraction: [0.5, guide],
  cookerFullToA: [10, guide],
  cookerRestFraction: [0.3, guide],
  cookerSocketOutletA: [5, guide],
  instantaneousHeaterFirstFraction: [1, guide],
  instantaneousHeaterSecondFraction: [1, guide],
  instantaneousHeaterRestFraction: [0.25, guide],
  thermostaticHeaterFraction: [1, guide],
  storageHeatingFraction: [1, guide],
  standardCircuitFirstFraction: [1, guide],
  standardCircuitRestFraction: [0.4, guide],
  otherSocketOutletFirstFraction: [1, guide],
  otherSocketOutletRestFraction: [0.4, guide],
});
