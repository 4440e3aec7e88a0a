import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

/** (iii) of it and 433.1.201, as quoted at https://engx.theiet.org/f/wiring-and-regulations/30845/overload-protection---regulation-433-1-201and-bs-88-fuses */
const coordination: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.1",
  checked: "secondary copy",
};
const rewireable: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.202 and Appendix 4 section 5",
  checked: "secondary copy",
};

/** Co-ordination of conductor and overload device, Ib <= In <= Iz and I2 <= 1.45 Iz. */
export const overloadLimits = sourced({
  /** Met by In <= Iz for BS EN 60898, BS EN 61009 and BS 88 devices. */
  operatingMultiple: [1.45, coordination],
  /** Cf: with a BS 3036 fuse In <= 0.725 Iz. */
  semiEnclosedFactor: [0.725, rewireable],
});
