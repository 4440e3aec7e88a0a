import { boardGaps } from "../electrical/circuit-gaps.ts";
import { circuitDemandA } from "../electrical/load-demand.ts";
import { zoneTreeOf } from "../electrical/zone-tree.ts";
import { at, evidence, missing } from "./evidence.ts";
import { gapsToMissing } from "./gaps-to-missing.ts";
import type { Rule } from "./rule.ts";

/** Ib above In: the loads of a circuit together ask for more than its device carries. */
export const designCurrent: Rule = {
  id: "design-current",
  variants: { over: "fix" },
  source: { kind: "regulation", document: "BS 7671:2018", clause: "433.1.1", checked: "from memory" },
  check: (model) =>
    zoneTreeOf(model).circuits.flatMap(({ root, zones }) => {
      const designA = circuitDemandA(model, root);
      const unknown = root.cables.length === 0 ? [] : gapsToMissing(boardGaps(model, zones));
      if (designA === undefined) return unknown;
      const { ratingA: deviceA, station } = root.upstream;
      if (deviceA === undefined) return [missing(at("station", station), "deviceRatingA"), ...unknown];
      if (designA <= deviceA) return unknown;
      return [...evidence("over", [at("station", station)], { designA, deviceA }), ...unknown];
    }),
};
