import { pointDemand } from "../circuit/point-demand.ts";
import { hasSocketOutlet, isLightingPoint, zonesOfCircuit } from "../circuit/zone-kinds.ts";
import { lightingLimits } from "../trade/lighting-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** More lights than about a dozen on a 6 A device, though their load fits. Where it does not, `design-current` speaks. */
export const lightingLoad: Rule = {
  id: "lighting-load",
  variants: { many: "query" },
  source: lightingLimits.sources.usualPointsOnSixAmp,
  check: (model) =>
    model.zones
      .filter((zone) => !zone.isFused && !hasSocketOutlet(model, zone))
      .flatMap((zone): (Evidence | Missing)[] => {
        const all = zonesOfCircuit(model, zone).flatMap(({ points }) => points);
        const lamps = [...new Set(all)].filter((id) => isLightingPoint(model, id));
        const { usualPointsOnSixAmp: usualCount, usualDeviceA } = lightingLimits;
        if (lamps.length <= usualCount) return [];
        const way = at("station", zone.upstream.station);
        const deviceA = zone.upstream.ratingA;
        if (deviceA === undefined) return [missing(way, "deviceRatingA")];
        const demandA = lamps.reduce((sum, id) => {
          const demand = pointDemand(model, id);
          return sum + ("demandA" in demand ? demand.demandA : 0);
        }, 0);
        if (deviceA > usualDeviceA || demandA > deviceA) return [];
        return evidence("many", [way], { deviceA, pointCount: lamps.length, usualCount });
      }),
};
