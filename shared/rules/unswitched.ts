import { darkRoses } from "../circuit/dark-roses.ts";
import { lampsAlwaysLit } from "../circuit/lamps-always-lit.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A lamp with nothing in its line that could turn it off, or at a rose that no switched line comes back to. */
export const unswitched: Rule = {
  id: "unswitched",
  variants: { none: "fix", "no-return": "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "463.1.1", checked: "from memory" },
  explains: ["not-served"],
  check: (model) => [
    ...lampsAlwaysLit(model).flatMap(({ lamps, idleSwitches }) =>
      idleSwitches.length > 0 ? [] : evidence("none", allAt("station", lamps)),
    ),
    ...darkRoses(model).flatMap(({ rose, cores }) => {
      const place = at("station", rose);
      return evidence("no-return", [...allAt("conductor", cores), place], {}, [place]);
    }),
  ],
};
