import { hasSpurRules } from "../circuit/zone-kinds.ts";
import { spurOverload } from "../circuit/spur-overload.ts";
import { allAt, evidence } from "./evidence.ts";
import { lackingSizes } from "./lacking-sizes.ts";
import type { Rule } from "./rule.ts";

/** A point beyond a point on an unfused spur, named at the cable that goes on from the first. */
export const spurOnSpur: Rule = {
  id: "spur-on-spur",
  variants: { beyond: "fix" },
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
        ...zone.spurs.spurs.flatMap((spur) =>
          spur.outer.flatMap((branch) => {
            const cables = allAt(
              "cable",
              branch.run.cables.map(({ id }) => id),
            );
            const places = [...cables, ...allAt("station", [branch.near, branch.far])];
            return evidence("beyond", cables, spurOverload(model, spur), places);
          }),
        ),
        ...lackingSizes(zone),
      ]),
};
