import { hasSocketOutlet } from "../circuit/zone-kinds.ts";
import { mostFloorAreaM2 } from "../trade/floor-area.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** A stated floor area above what guidance gives a standard socket-outlet circuit of its shape and device. */
export const floorArea: Rule = {
  id: "floor-area",
  variants: { ring: "query", radial: "query" },
  source: {
    kind: "guidance",
    document: "On-Site Guide",
    clause: "Table H2.1 (formerly Table 8A)",
    checked: "secondary copy",
  },
  isNeverHidden: true,
  check: (model) =>
    model.circuits.flatMap(({ way, zone, isMet }): (Evidence | Missing)[] => {
      const { floorAreaM2: areaM2, deviceRatingA: deviceA } = model.stations.get(way)?.settings ?? {};
      if (areaM2 === undefined || isMet || !hasSocketOutlet(model, zone)) return [];
      const place = at("station", way);
      const shape = zone.shape.rings.length > 0 ? "ring" : "radial";
      if (shape === "radial" && deviceA === undefined) return [missing(place, "deviceRatingA")];
      const mostAreaM2 = mostFloorAreaM2(shape, deviceA);
      if (mostAreaM2 === undefined || areaM2 <= mostAreaM2) return [];
      const device = deviceA === undefined ? {} : { deviceA };
      return evidence(shape, [place], { way, areaM2, mostAreaM2, ...device });
    }),
};
