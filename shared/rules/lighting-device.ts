import { carriesLoad, isLightingCircuit } from "../circuit/zone-kinds.ts";
import { leastSizes } from "../trade/least-sizes.ts";
import { lightingLimits } from "../trade/lighting-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** Lights on a device above 16 A, or on cable below 1.0 mm². */
export const lightingDevice: Rule = {
  id: "lighting-device",
  variants: { over: "fix", small: "fix" },
  source: lightingLimits.sources.mostDeviceA,
  variantSources: { small: leastSizes.sources.lightingCsaMm2 },
  check: (model) =>
    model.zones
      .filter((zone) => isLightingCircuit(model, zone))
      .flatMap(({ upstream, cables }): (Evidence | Missing)[] => {
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
        return [...(deviceA > mostA ? evidence("over", [way], { deviceA, mostA }) : []), ...small];
      }),
};
