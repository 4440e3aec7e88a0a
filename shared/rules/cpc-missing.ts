import { lossesOf } from "../circuit/losses.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A point, switch, isolator, control or connection unit that no protective conductor reaches. */
export const cpcMissing: Rule = {
  id: "cpc-missing",
  variants: { missing: "danger" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "411.3.1.1", checked: "from memory" },
  check: (model) =>
    lossesOf(model, "earth").flatMap(({ stations, cores }) => {
      const places = allAt("station", stations);
      return evidence("missing", cores.length > 0 ? allAt("conductor", cores) : places, {}, places);
    }),
};
