import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** A loop that does not pass through the way: at the end of a leg, in a branch, or behind a fuse. */
export const ringLoop: Rule = {
  id: "ring-loop",
  variants: { loop: "fix" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "643.2.1",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones.flatMap(({ shape }) =>
      shape.loops.flatMap(({ cables, stations }) =>
        evidence(
          "loop",
          allAt(
            "cable",
            cables.map(({ id }) => id),
          ),
          {},
          allAt("station", stations),
        ),
      ),
    ),
};
