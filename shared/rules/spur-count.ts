import { isRingCircuit } from "../circuit/zone-kinds.ts";
import { spurLimits } from "../trade/spur-limits.ts";
import { allAt, evidence } from "./evidence.ts";
import { lackingSizes } from "./lacking-sizes.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** More unfused spurs than points on the ring itself. */
export const spurCount: Rule = {
  id: "spur-count",
  variants: { many: "query" },
  source: {
    kind: "guidance",
    document: "BS 7671:2018",
    clause: "Appendix 15; On-Site Guide 7.2.2",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones
      .filter((zone) => isRingCircuit(model, zone))
      .flatMap((zone): (Evidence | Missing)[] => {
        const { shape, spurs, points, ways } = zone;
        const onRing = new Set(shape.rings.flatMap(({ stations }) => stations));
        const ringPoints = points.filter((point) => onRing.has(point)).length;
        const counted = spurs.spurs.filter(
          ({ first, isFused, points: own }) => first.depth === 1 && !isFused && own.length > 0,
        );
        const most = ringPoints * spurLimits.unfusedSpursPerRingPoint;
        const open = spurs.lacking.filter(({ depth }) => depth === 1).length;
        if (counted.length <= most)
          return counted.length + open > most ? lackingSizes(zone, ({ depth }) => depth === 1) : [];
        return evidence("many", allAt("station", ways), { spurs: counted.length, ringPoints });
      }),
};
