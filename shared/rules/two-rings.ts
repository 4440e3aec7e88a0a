import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/** More than one ring on a way: protected, and to be justified. */
export const twoRings: Rule = {
  id: "two-rings",
  variants: { two: "query" },
  source: { kind: "common practice, no source" },
  check: (model) =>
    model.zones.flatMap(({ shape, ways }) =>
      shape.rings.length > 1 ? evidence("two", allAt("station", ways), { rings: shape.rings.length }) : [],
    ),
};
