import { hasSpurRules } from "../circuit/zone-kinds.ts";
import { spurOverload } from "../circuit/spur-overload.ts";
import { spurLimits } from "../trade/spur-limits.ts";
import { allAt, evidence } from "./evidence.ts";
import { lackingSizes } from "./lacking-sizes.ts";
import type { Rule } from "./rule.ts";

/** An unfused spur that feeds more than one point side by side, as through a junction box that feeds two. */
export const spurOnePoint: Rule = {
  id: "spur-one-point",
  variants: { several: "fix" },
  source: {
    kind: "guidance",
    document: "BS 7671:2018",
    clause: "Appendix 15; On-Site Guide 7.2.2",
    checked: "secondary copy",
  },
  check: (model) =>
    model.zones
      .filter((zone) => hasSpurRules(model, zone))
      .flatMap((zone) => [
        ...zone.spurs.spurs.flatMap((spur) => {
          if (spur.nearPoints.length <= spurLimits.pointsPerUnfusedSpur) return [];
          const cables = allAt(
            "cable",
            spur.first.run.cables.map(({ id }) => id),
          );
          const places = [...cables, ...allAt("station", spur.nearPoints)];
          return evidence("several", cables, spurOverload(model, spur), places);
        }),
        ...lackingSizes(zone),
      ]),
};
