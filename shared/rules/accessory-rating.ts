import type { StationKind } from "../board/station-kinds.ts";
import { accessoryDuty, usualAccessoryRatingA } from "../circuit/accessory-duty.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

const rated: readonly StationKind[] = ["plate-switch", "isolator", "cooker-control", "junction-box"];

/**
 * A switch, isolator, control or box rated below what it may carry. One that does not say has the rating usual for
 * it, where that is enough; an isolator, made in many ratings, must say.
 */
export const accessoryRating: Rule = {
  id: "accessory-rating",
  variants: { underrated: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "512.1.2 and 536", checked: "from memory" },
  check: (model) =>
    [...model.stations.values()].flatMap((station): (Evidence | Missing)[] => {
      const { id, kind, settings } = station;
      const duty = rated.includes(kind) && model.used.has(id) ? accessoryDuty(model, station) : undefined;
      if (!duty) return [];
      const place = at("station", id);
      if ("lacks" in duty) return [missing(at("station", duty.lacks.station), duty.lacks.field)];
      const { carriesA } = duty;
      const stated = settings?.ratingA;
      const ratingA = stated ?? usualAccessoryRatingA(model, station) ?? 0;
      if (ratingA >= carriesA) return [];
      return stated === undefined
        ? [missing(place, "ratingA")]
        : evidence("underrated", [place], { ratingA, carriesA });
    }),
};
