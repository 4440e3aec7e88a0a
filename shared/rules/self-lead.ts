import { isTwoSided } from "../board/station-kinds.ts";
import { at, evidence } from "./evidence.ts";
import type { Rule } from "./rule.ts";

/**
 * A lead with both ends in one station. From supply to load it bypasses the fuse or the switch inside; between the
 * terminals of a switch or a rose it is `always-on`, and between line, neutral and earth `short` or `neutral-earth`.
 */
export const selfLead: Rule = {
  id: "self-lead",
  variants: { loop: "fix", bypass: "danger" },
  source: { kind: "common practice, no source" },
  standsWithUnknown: true,
  check: (model) =>
    model.cables.flatMap((cable) => {
      if (cable.fromStation !== cable.toStation) return [];
      const kind = model.stations.get(cable.fromStation)?.kind;
      const leads = cable.conductors.filter((conductor) => conductor.class !== "crossed");
      const isBypass = leads.some(({ fromNode, toNode }) => fromNode !== toNode);
      if (isBypass && kind !== undefined && isTwoSided(kind))
        return evidence("bypass", [at("cable", cable.id)]);
      const isLoop = leads.some(({ fromNode, toNode }) => fromNode === toNode);
      return isLoop ? evidence("loop", [at("cable", cable.id)]) : [];
    }),
};
