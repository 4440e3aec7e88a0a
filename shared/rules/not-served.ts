import { coresToward, isReachedBy } from "../circuit/losses.ts";
import { isServed } from "../circuit/served.ts";
import { allAt, at, evidence } from "./evidence.ts";
import type { Evidence, Rule } from "./rule.ts";

/** A point that the task wants alive and that cannot be used. Where a core was lost on the way, that is the cause. */
export const notServed: Rule = {
  id: "not-served",
  variants: { "not-served": "fix" },
  source: { kind: "common practice, no source" },
  isOutcome: true,
  check: (model) => {
    const wanted = new Set(
      (model.wiring.wants ?? []).flatMap((want) => (want.kind === "served" ? want.stations : [])),
    );
    const dead = [...wanted].filter((id) => !isServed(model, id)).sort();
    if (dead.length === 0) return [];
    return dead.flatMap((id): Evidence[] => {
      const place = at("station", id);
      const station = model.stations.get(id);
      const cores = (["live", "neutral"] as const).flatMap((lost) =>
        station && !isReachedBy(model, station, lost) ? coresToward(model, station, lost) : [],
      );
      return evidence("not-served", [...allAt("conductor", new Set(cores)), place], {}, [place]);
    });
  },
};
