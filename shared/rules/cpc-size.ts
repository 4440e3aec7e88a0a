import { cpcWithstandOf } from "../electrical/cpc-withstand.ts";
import { earthLoopsOf } from "../electrical/earth-loops.ts";
import { at, evidence } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Rule } from "./rule.ts";

/** A protective conductor that a fault at its far end would heat beyond its limit before it is cut off. */
export const cpcSize: Rule = {
  id: "cpc-size",
  variants: { small: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "543.1.3 and Table 54.3",
    checked: "secondary copy",
  },
  check: (model) => [
    ...cpcWithstandOf(model).flatMap(({ cable, cpcCsaMm2, leastCsaMm2, faultA, disconnectionS }) =>
      cpcCsaMm2 >= leastCsaMm2
        ? []
        : evidence("small", [at("cable", cable)], { cable, cpcCsaMm2, leastCsaMm2, faultA, disconnectionS }),
    ),
    ...gapsToMissing(earthLoopsOf(model).gaps),
  ],
};
