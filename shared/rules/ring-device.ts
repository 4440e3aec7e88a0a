import { isRingCircuit } from "../circuit/zone-kinds.ts";
import { ringLimits } from "../trade/ring-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A ring on a device above 32 A, or on one below the usual 30 A. */
export const ringDevice: Rule = {
  id: "ring-device",
  variants: { over: "fix", under: "note" },
  source: ringLimits.sources.mostDeviceA,
  check: (model) =>
    model.zones.flatMap((zone): (Evidence | Missing)[] => {
      if (!isRingCircuit(model, zone)) return [];
      const { station, ratingA: deviceA } = zone.upstream;
      const way = at("station", station);
      const { leastDeviceA: leastA, mostDeviceA: mostA } = ringLimits;
      if (deviceA === undefined) return [missing(way, "deviceRatingA")];
      if (deviceA > mostA) return evidence("over", [way], { deviceA, mostA });
      if (deviceA < leastA) return evidence("under", [way], { deviceA, leastA, mostA });
      return [];
    }),
};
