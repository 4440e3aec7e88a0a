import { lossesOf } from "../circuit/losses.ts";
import { isServed } from "../circuit/served.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

/** A point that the task wants alive and that cannot be used. Where a core was lost on the way, that is the cause. */
export const notServed: Rule = {
  id: "not-served",
  variants: { "not-served": "fix" },
  source: { kind: "common practice, no source" },
  check: (model) => {
    const wanted = new Set(
      (model.wiring.wants ?? []).flatMap((want) => (want.kind === "served" ? want.stations : [])),
    );
    const dead = [...wanted].filter((id) => !isServed(model, id)).sort();
    if (dead.length === 0) return [];
    const losses = [...lossesOf(model, "live"), ...lossesOf(model, "neutral")];
    return dead.flatMap((id): Evidence[] => {
      const place = at("station", id);
      const cores = losses.flatMap((loss) => (loss.stations.includes(id) ? loss.cores : []));
      return evidence("not-served", [...allAt("conductor", cores), place], {}, [place]);
    });
  },
};
