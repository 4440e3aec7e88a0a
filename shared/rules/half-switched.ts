import { halfSwitchedLamps, unsaidSwitches } from "../circuit/half-switched-lamps.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** Two-way switches that do not each work by themselves: a strapper that is missing, or a common on a strapper. */
export const halfSwitched: Rule = {
  id: "half-switched",
  variants: { half: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "643.10", checked: "from memory" },
  check: (model) => [
    ...halfSwitchedLamps(model).flatMap(({ lamp, switches, cores }) => {
      const places = allAt("station", [lamp, ...switches]);
      return evidence("half", cores.length > 0 ? allAt("conductor", cores) : places, {}, places);
    }),
    ...unsaidSwitches(model).map((id) => missing(at("station", id), "switching")),
  ],
};
