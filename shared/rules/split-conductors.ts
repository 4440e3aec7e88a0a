import type { Run } from "../circuit/model.ts";
import { allAt, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

const isApart = (a: Run, b: Run): boolean => [...a.classes].every((conductor) => !b.classes.has(conductor));

/** Runs of a block that carry only some conductors, where others of it carry only others. */
const splitRuns = (runs: readonly Run[]): Run[] => {
  const partial = runs.filter(({ classes }) => classes.size > 0 && classes.size < 3);
  return partial.filter((run) => partial.some((other) => other !== run && isApart(run, other)));
};

/** Line, neutral and earth of one feed go round by different cables. */
export const splitConductors: Rule = {
  id: "split-conductors",
  variants: { split: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "521.8.1", checked: "from memory" },
  check: (model) =>
    model.zones.flatMap(({ shape }) =>
      [...shape.rings, ...shape.loops].flatMap(({ runs }) => {
        const split = splitRuns(runs);
        const cables = allAt(
          "cable",
          split.flatMap((run) => run.cables.map(({ id }) => id)),
        );
        const cores = split.flatMap(({ missing }) =>
          missing.flatMap(({ id, crossedBy }) => (crossedBy.length > 0 ? crossedBy : [id])),
        );
        return evidence("split", [...cables, ...allAt("conductor", cores)], {}, cables);
      }),
    ),
};
