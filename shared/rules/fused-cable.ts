import { carriesLoad } from "../circuit/zone-kinds.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** Cable on the load side of a connection unit that may carry less than the fuse, the way it is run. */
export const fusedCable: Rule = {
  id: "fused-cable",
  variants: { underrated: "fix" },
  source: overloadLimits.sources.operatingMultiple,
  check: (model) =>
    model.zones
      .filter(({ isFused }) => isFused)
      .flatMap(({ cables, upstream }) =>
        cables
          .filter(carriesLoad)
          .flatMap(({ id, csaMm2, ratingA, ratingLacks, method }): (Evidence | Missing)[] => {
            const cable = at("cable", id);
            const fcu = upstream.station;
            const fuseA = upstream.ratingA;
            if (csaMm2 === undefined || ratingA === undefined)
              return [missing(cable, ratingLacks ?? "csaMm2")];
            if (fuseA === undefined) return [missing(at("station", fcu), "fuseRatingA")];
            if (ratingA >= fuseA) return [];
            const facts = { cable: id, csaMm2, ratingA, fuseA, fcu, method };
            return evidence("underrated", [cable], facts, [cable, at("station", fcu)]);
          }),
      ),
};
