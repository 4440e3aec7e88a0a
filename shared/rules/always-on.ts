import { lampsAlwaysLit } from "../circuit/lamps-always-lit.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A lamp that no switch turns off, where a switch is there to. */
export const alwaysOn: Rule = {
  id: "always-on",
  variants: { on: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "463.1.1", checked: "from memory" },
  check: (model) =>
    lampsAlwaysLit(model).flatMap(({ lamps, idleSwitches }) =>
      idleSwitches.length === 0
        ? []
        : evidence("on", allAt("station", lamps), {}, allAt("station", [...lamps, ...idleSwitches])),
    ),
};
