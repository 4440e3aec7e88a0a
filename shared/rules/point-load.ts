import { statedLoadA } from "../circuit/point-demand.ts";
import { socketOutletDemandA } from "../trade/accessory-rating.ts";
import { accessoryRatings } from "../trade/accessory-ratings.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** More stated load at one socket outlet than it is made for: 13 A a single, 20 A a twin. */
export const pointLoad: Rule = {
  id: "point-load",
  variants: { single: "query", twin: "query" },
  source: sourceOfRating(),
  isNeverHidden: true,
  check: (model) =>
    [...model.stations.values()].flatMap(({ id, kind, settings }): (Evidence | Missing)[] => {
      const loadA = kind === "socket-outlet" && model.used.has(id) ? statedLoadA(model, id) : undefined;
      if (loadA === undefined || loadA <= socketOutletDemandA(1)) return [];
      const point = at("station", id);
      if (settings?.gangs === undefined) return [missing(point, "gangs")];
      const mostA = socketOutletDemandA(settings.gangs);
      if (loadA <= mostA) return [];
      return evidence(settings.gangs === 1 ? "single" : "twin", [point], { point: id, loadA, mostA });
    }),
};

function sourceOfRating(): Rule["source"] {
  const row = accessoryRatings.find(({ accessory }) => accessory === "twin socket outlet");
  return row?.source ?? { kind: "common practice, no source" };
}
