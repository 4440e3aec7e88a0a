import type { CableModel, CircuitModel, Run, Zone } from "../circuit/model.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

const isApart = (a: Run, b: Run): boolean => [...a.classes].every((conductor) => !b.classes.has(conductor));

/** Runs of a block that carry only some conductors, where others of it carry only others. */
const splitRuns = (runs: readonly Run[]): Run[] => {
  const partial = runs.filter(({ classes }) => classes.size > 0 && classes.size < 3);
  return partial.filter((run) => partial.some((other) => other !== run && isApart(run, other)));
};

/**
 * Leads that bring the neutral of what is behind a fuse past the fuse, or its earth where a cable there has none: the
 * line goes through the connection unit and the rest does not.
 */
const pastFuse = (model: CircuitModel): CableModel[] =>
  model.cables.filter(({ zone, conductors, fromLine, toLine }) => {
    const classes = new Set(conductors.map((conductor) => conductor.class));
    const [from, to] = [model.zoneOfNode(fromLine), model.zoneOfNode(toLine)];
    if (zone || !from || !to || classes.has("live") || !from.ways.some((way) => to.ways.includes(way)))
      return false;
    const lacksEarth = [from, to].some((side) => side.isFused && hasCoreOut(side));
    return classes.has("neutral") || (classes.has("earth") && lacksEarth);
  });

const hasCoreOut = ({ cables }: Zone): boolean =>
  cables.some(({ missing }) => missing.some((core) => core.class === "earth"));

/** Line, neutral and earth of one feed go round by different cables. */
export const splitConductors: Rule = {
  id: "split-conductors",
  variants: { split: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "521.8.1", checked: "from memory" },
  check: (model) => [
    ...pastFuse(model).flatMap(({ id }) => evidence("split", [at("cable", id)])),
    ...model.zones.flatMap(({ shape }) =>
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
  ],
};
