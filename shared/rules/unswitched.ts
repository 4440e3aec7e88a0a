import { lampsAlwaysLit } from "../circuit/lamps-always-lit.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A lamp with nothing in its line that could turn it off. */
export const unswitched: Rule = {
  id: "unswitched",
  variants: { none: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "463.1.1", checked: "from memory" },
  check: (model) =>
    lampsAlwaysLit(model).flatMap(({ lamps, idleSwitches }) =>
      idleSwitches.length > 0 ? [] : evidence("none", allAt("station", lamps)),
    ),
};
