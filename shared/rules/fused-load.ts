import { fusedDemandA, stationsBehind } from "../electrical/load-demand.ts";
import { boardGaps } from "../electrical/circuit-gaps.ts";
import { zoneTreeOf } from "../electrical/zone-tree.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { at, evidence, missing } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Rule } from "./rule.ts";

/** More load behind a connection unit than its fuse carries, or a full load for hours. */
export const fusedLoad: Rule = {
  id: "fused-load",
  variants: { over: "fix", "long-running": "query" },
  source: {
    kind: "standard",
    document: "BS 1363-4",
    clause: "rating of a fused connection unit; long running is common practice",
    checked: "secondary copy",
  },
  isNeverHidden: true,
  check: (model) => {
    const fcus = model.zones.flatMap((zone) =>
      zone.points.filter((id) => model.stations.get(id)?.kind === "fcu").map((fcu) => ({ fcu, zone })),
    );
    return fcus.flatMap(({ fcu, zone }) => {
      const beyond = zoneTreeOf(model).childOf(fcu);
      const unknown = gapsToMissing(boardGaps(model, beyond ? [zone, beyond] : [zone]));
      const designA = fusedDemandA(model, fcu);
      if (designA === undefined) return unknown;
      const fuseA = model.stations.get(fcu)?.settings?.fuseRatingA;
      if (fuseA === undefined) return [missing(at("station", fcu), "fuseRatingA"), ...unknown];
      const place = [at("station", fcu)];
      if (designA > fuseA) return [...evidence("over", place, { designA, fuseA }), ...unknown];
      const runsForHours = [fcu, ...stationsBehind(model, fcu)].some((id) =>
        model.loadsAt
          .get(id)
          ?.some(({ powerW, isLongRunning }) => isLongRunning && powerW >= fuseLimits.fullLoadApplianceW),
      );
      return [...(runsForHours ? evidence("long-running", place, { designA, fuseA }) : []), ...unknown];
    });
  },
};
