import { coordination } from "../circuit/coordination.ts";
import { carriesLoad, hasSocketOutlet } from "../circuit/zone-kinds.ts";
import { circuitDemandA } from "../electrical/load-demand.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import { cableEvidence } from "./cable-evidence.ts";
import type { Rule } from "./rule.ts";

/**
 * Cable of a radial for socket outlets that its device does not protect. With Iz not below In throughout any shape of
 * branches is fine; smaller cable that leaves such cable is a spur, which the rules on spurs judge.
 */
export const radialCable: Rule = {
  id: "radial-cable",
  variants: { underrated: "fix", "semi-enclosed": "fix" },
  source: overloadLimits.sources.operatingMultiple,
  variantSources: { "semi-enclosed": overloadLimits.sources.semiEnclosedFactor },
  check: (model) =>
    model.zones.flatMap((zone) => {
      if (zone.isFused || zone.shape.rings.length > 0 || !hasSocketOutlet(model, zone)) return [];
      const inSpurs = new Set(
        zone.spurs.spurs.flatMap(({ branches }) => branches.flatMap(({ run }) => run.cables)),
      );
      const designA = circuitDemandA(model, zone);
      return zone.cables
        .filter((cable) => carriesLoad(cable) && !inSpurs.has(cable))
        .flatMap((cable) => cableEvidence(cable, coordination(model, cable), designA));
    }),
};
