import type { StationId } from "../board/ids.ts";
import { cutOffBy, isCookerControl } from "../circuit/cut-off.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { isCooking, wantsOwnCircuit } from "../circuit/own-circuit-wants.ts";
import { zonesOfCircuit } from "../circuit/zone-kinds.ts";
import { applianceLimits } from "../trade/appliance-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * A cooker, a water heater over 15 l or a shower that shares its circuit. A hob and an oven on one control are one;
 * connection units count by what they feed. On a ring `heavy-on-ring` is said instead, but of a shower.
 */
export const ownCircuit: Rule = {
  id: "own-circuit",
  variants: { cooking: "fix", "water-heater": "fix", shower: "fix" },
  source: applianceLimits.sources.ownCircuitOverLitres,
  variantSources: { cooking: applianceLimits.sources.ownCircuitCookingOverW },
  isNeverHidden: true,
  check: (model) => {
    const cutters = cutOffBy(model);
    return model.zones
      .filter(({ isFused }) => !isFused)
      .flatMap((head) => {
        const points = [...new Set(zonesOfCircuit(model, head).flatMap((zone) => zone.points))].filter(
          (id) => model.stations.get(id)?.kind !== "fcu",
        );
        const isRing = head.shape.rings.length > 0;
        return points.flatMap((id): (Evidence | Missing)[] => {
          const want = wantsOwnCircuit(model, id);
          if (want === false) return [];
          const others = points.filter((other) => other !== id && !shareControl(model, cutters, id, other));
          if (others.length === 0) return [];
          // On a ring only a shower is this rule's matter: how large a heater is matters to `heavy-on-ring`.
          if (typeof want === "object")
            return isRing && want.lacks !== "appliance" ? [] : [missing(at("station", id), want.lacks)];
          if (isRing && want !== "shower") return [];
          const facts = { point: id, others, overLitres: applianceLimits.ownCircuitOverLitres };
          return evidence(want, [at("station", id)], facts, [at("station", id), ...allAt("station", others)]);
        });
      });
  },
};

/** True for two cooking appliances on one control, of which it may serve two. */
function shareControl(
  model: CircuitModel,
  cutters: ReturnType<typeof cutOffBy>,
  a: StationId,
  b: StationId,
): boolean {
  if (!isCooking(model, a) || !isCooking(model, b)) return false;
  return (cutters.get(a) ?? []).some((id) => {
    if (!isCookerControl(model, id) || !cutters.get(b)?.includes(id)) return false;
    const served = [...cutters].filter(([other, list]) => list.includes(id) && isCooking(model, other));
    return served.length <= applianceLimits.appliancesPerCookerControl;
  });
}
