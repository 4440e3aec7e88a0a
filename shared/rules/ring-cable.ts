import type { CableModel } from "../circuit/model.ts";
import { openRingOf, unfitForRing } from "../circuit/open-legs.ts";
import { carriesLoad, isRingCircuit } from "../circuit/zone-kinds.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import { lackingOfOpenRing } from "./lacking-sizes.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** Cable of a ring below 2.5 mm², or that may carry less than 20 A the way it is run. */
export const ringCable: Rule = {
  id: "ring-cable",
  variants: { small: "fix", underrated: "fix" },
  source: ringLimits.sources.leastCsaMm2,
  check: (model) =>
    model.zones.flatMap((zone) => {
      if (isRingCircuit(model, zone))
        return zone.shape.rings.flatMap((ring) => ring.cables.filter(carriesLoad).flatMap(checked));
      // A ring that does not close yet is told of cable that no ring may have; of what it may carry once it is closed.
      const open = openRingOf(model, zone);
      const unfit = unfitForRing(zone, open.is === "legs" ? open : zone.shape).filter(carriesLoad);
      if (open.is === "legs") return unfit.flatMap(checked);
      return unfit.length > 0 || open.is === "unsized" ? lackingOfOpenRing(open, zone) : [];
    }),
};

function checked({ id, csaMm2, ratingA, ratingLacks, method, upstream }: CableModel): (Evidence | Missing)[] {
  const cable = at("cable", id);
  const { leastCsaMm2, leastCapacityA: leastA } = ringLimits;
  const deviceA = upstream?.ratingA;
  const facts = { cable: id, method, leastA, leastCsaMm2, ...(deviceA === undefined ? {} : { deviceA }) };
  if (csaMm2 === undefined) return [missing(cable, "csaMm2")];
  if (csaMm2 < leastCsaMm2) return evidence("small", [cable], { ...facts, csaMm2 });
  if (ratingA === undefined) return [missing(cable, ratingLacks ?? "csaMm2")];
  if (ratingA < leastA) return evidence("underrated", [cable], { ...facts, csaMm2, ratingA });
  return [];
}
