import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const regulation: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.204",
  checked: "secondary copy",
};
const design: Source = {
  kind: "guidance",
  document: "BS 7671:2018",
  clause: "Appendix 15; On-Site Guide Appendix H, load for voltage drop",
  checked: "secondary copy",
};

/** What makes a ring final circuit. */
export const ringLimits = sourced({
  leastDeviceA: [30, regulation],
  mostDeviceA: [32, regulation],
  leastCsaMm2: [2.5, regulation],
  leastCapacityA: [20, regulation],
  /** Also the load at a far socket outlet of any circuit where none is stated. */
  designFarEndA: [20, design],
  /** 20 A at the far point and the rest of 32 A spread evenly have the effect of this current there. */
  designEffectiveA: [26, design],
});
