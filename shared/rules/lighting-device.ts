import type { CableId } from "../board/ids.ts";
import { carriesDevice, overloadFactor } from "../circuit/coordination.ts";
import type { CableModel, CircuitModel, Zone } from "../circuit/model.ts";
import { carriesLoad, isLightingCircuit } from "../circuit/zone-kinds.ts";
import { leastSizes } from "../trade/least-sizes.ts";
import { lightingLimits } from "../trade/lighting-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** Cables that this device does not protect and the largest one for lights would: changing the device mends both. */
function setRightByDevice(model: CircuitModel, { cables, upstream }: Zone): CableId[] {
  const factor = overloadFactor(model, upstream);
  const carries = ({ ratingA }: CableModel, deviceA: number | undefined): boolean | undefined =>
    carriesDevice(ratingA, deviceA, factor);
  return cables
    .filter(carriesLoad)
    .filter((cable) => carries(cable, upstream.ratingA) === false)
    .filter((cable) => carries(cable, lightingLimits.mostDeviceA) === true)
    .map(({ id }) => id);
}

/** Lights on a device above 16 A, or on cable below 1.0 mm². */
export const lightingDevice: Rule = {
  id: "lighting-device",
  variants: { over: "fix", small: "fix" },
  source: lightingLimits.sources.mostDeviceA,
  variantSources: { small: leastSizes.sources.lightingCsaMm2 },
  check: (model) =>
    model.zones
      .filter((zone) => isLightingCircuit(model, zone))
      .flatMap((zone): (Evidence | Missing)[] => {
        const { upstream, cables } = zone;
        const way = at("station", upstream.station);
        const deviceA = upstream.ratingA;
        const { mostDeviceA: mostA } = lightingLimits;
        const { lightingCsaMm2: leastCsaMm2 } = leastSizes;
        const small = cables.filter(carriesLoad).flatMap(({ id, csaMm2 }): (Evidence | Missing)[] => {
          const cable = at("cable", id);
          if (csaMm2 === undefined) return [missing(cable, "csaMm2")];
          return csaMm2 < leastCsaMm2 ? evidence("small", [cable], { cable: id, csaMm2, leastCsaMm2 }) : [];
        });
        if (deviceA === undefined) return [missing(way, "deviceRatingA"), ...small];
        if (deviceA <= mostA) return small;
        const causes = [way, ...allAt("cable", setRightByDevice(model, zone))];
        return [...evidence("over", causes, { deviceA, mostA }, [way]), ...small];
      }),
};
