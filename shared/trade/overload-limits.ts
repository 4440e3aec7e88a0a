import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const memory: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "433.1.1",
  checked: "from memory",
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
  operatingMultiple: [1.45, memory],
  /** Cf: with a BS 3036 fuse In <= 0.725 Iz. */
  semiEnclosedFactor: [0.725, rewireable],
});
