import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const limits: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "525.202 and Appendix 4 section 6.4 (Table 4Ab)",
  checked: "secondary copy",
};
const loop: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.4.4",
  checked: "secondary copy",
};
const measured: Source = {
  kind: "guidance",
  document: "BS 7671:2018",
  clause: "Appendix 3; On-Site Guide Appendix B",
  checked: "secondary copy",
};

/** The supply and what is allowed to be lost on the way to the load. */
export const supply = sourced({
  nominalV: [230, limits],
  /** Voltage factor for the lowest supply voltage, in fault loop limits only, never in the adiabatic check. */
  cMin: [0.95, loop],
  /** A reading taken cold is compared with this part of the limit; never on top of the 70 °C correction. */
  measuredZsFactor: [0.8, measured],
  lightingDropFraction: [0.03, limits],
  otherDropFraction: [0.05, limits],
});
