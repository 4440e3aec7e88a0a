import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/**
 * A loop that does not pass through the way: at the end of a leg or in a branch; behind a fuse, which protects its
 * cable either way round, it is to be justified.
 */
export const ringLoop: Rule = {
  id: "ring-loop",
  variants: { loop: "fix", fused: "query" },
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "643.2.1",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones.flatMap(({ shape, isFused }) =>
      shape.loops.flatMap(({ cables, stations }) =>
        evidence(
          isFused ? "fused" : "loop",
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
