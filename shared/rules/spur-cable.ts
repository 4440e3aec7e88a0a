import { carriesDevice, overloadFactor, worstThroughA } from "../circuit/coordination.ts";
import type { CableModel, CircuitModel, Zone } from "../circuit/model.ts";
import { heaviestPoint } from "../circuit/heaviest-point.ts";
import { carriesLoad, hasSpurRules, pointsBeyond } from "../circuit/zone-kinds.ts";
import type { StationId } from "../board/ids.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import { spurLimits } from "../trade/spur-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import { lackingOf } from "./lacking-sizes.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * Cable of an unfused spur that is too small or may carry too little. It is held against the heaviest one of its
 * points: that there may be only one is for the rules on the arrangement.
 */
export const spurCable: Rule = {
  id: "spur-cable",
  variants: { small: "fix", overload: "fix", slim: "query" },
  source: spurLimits.sources.leastCsaMm2,
  variantSources: { overload: overloadLimits.sources.operatingMultiple },
  check: (model) =>
    model.zones
      .filter((zone) => hasSpurRules(model, zone))
      .flatMap((zone) => [
        ...zone.spurs.spurs.flatMap(({ branches }) =>
          branches.flatMap((branch) => {
            const points = pointsBeyond(zone, branch);
            const cables = branch.run.cables.filter(carriesLoad);
            return points.length === 0 ? [] : cables.flatMap((cable) => checked(model, zone, cable, points));
          }),
        ),
        ...zone.spurs.lacking.flatMap((branch) => lackingOf(branch, zone)),
      ]),
};

function checked(
  model: CircuitModel,
  { upstream }: Zone,
  { id, csaMm2, ratingA, ratingLacks, method }: CableModel,
  points: readonly StationId[],
): (Evidence | Missing)[] {
  const cable = at("cable", id);
  const deviceA = upstream.ratingA;
  if (csaMm2 === undefined) return [missing(cable, "csaMm2")];
  if (deviceA === undefined) return [missing(at("station", upstream.station), "deviceRatingA")];
  const { leastCsaMm2, leastCapacityA: leastA, fullSizeFromDeviceA } = spurLimits;
  const isLarge = deviceA >= fullSizeFromDeviceA;
  const facts = { cable: id, csaMm2, method, deviceA };
  if (isLarge && csaMm2 < leastCsaMm2) return evidence("small", [cable], { ...facts, leastCsaMm2 });
  if (ratingA === undefined) return [missing(cable, ratingLacks ?? "csaMm2")];
  const factor = overloadFactor(model, upstream);
  if (carriesDevice(ratingA, deviceA, factor) === true) return [];
  const worst = heaviestPoint(model, points);
  if ("lacks" in worst) return [missing(at("station", worst.point), worst.lacks)];
  const { demandA, point } = worst;
  // Where the kind of device is not said, only what would not matter is decided.
  const worstA = worstThroughA(demandA, deviceA, factor ?? 1);
  const mayReachA = worstThroughA(demandA, deviceA, factor ?? overloadLimits.semiEnclosedFactor);
  const places = [cable, at("station", point)];
  const all = { ...facts, ratingA, worstA, point };
  if (ratingA < worstA) return evidence("overload", [cable], all, places);
  if (ratingA < mayReachA) return [missing(at("station", upstream.station), "deviceStandard")];
  return isLarge && ratingA < leastA ? evidence("slim", [cable], { ...all, leastA }, places) : [];
}
