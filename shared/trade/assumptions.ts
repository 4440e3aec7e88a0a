import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

/** As given at https://sparkyhub.co.uk/references/loop-impedance-guide and https://tmuk.org/?p=18859 */
const declared: Source = {
  kind: "guidance",
  document: "What distributors declare",
  clause: "largest Ze usually declared for a TN-C-S supply",
  checked: "secondary copy",
};
const declaredTnS: Source = { ...declared, clause: "largest Ze usually declared for a TN-S supply" };
const rcd: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.3.3 and 411.3.4",
  checked: "secondary copy",
};
const table: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Tables 4B1 and 4C1",
  checked: "secondary copy",
};

/** What is taken where a wiring does not say. Loads: `ringLimits.designFarEndA`, `lightingLimits.assumedLampW`. */
export const assumptions = sourced({
  zeOhm: [0.35, declared],
  zeTnSOhm: [0.8, declaredTnS],
  rcdMa: [30, rcd],
  ambientC: [30, table],
  groupedCircuits: [1, table],
});
