import { coordination } from "../circuit/coordination.ts";
import { carriesLoad, hasSocketOutlet, isRingCircuit } from "../circuit/zone-kinds.ts";
import { circuitDemandA } from "../electrical/load-demand.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import { cableEvidence } from "./cable-evidence.ts";
import type { Rule } from "./rule.ts";

/** Cable that its device does not protect, on every circuit that is neither a ring nor a radial for socket outlets. */
export const deviceCable: Rule = {
  id: "device-cable",
  variants: { underrated: "fix", "semi-enclosed": "fix" },
  source: overloadLimits.sources.operatingMultiple,
  variantSources: { "semi-enclosed": overloadLimits.sources.semiEnclosedFactor },
  check: (model) =>
    model.zones
      .filter((zone) => !zone.isFused && !hasSocketOutlet(model, zone) && !isRingCircuit(model, zone))
      .flatMap((zone) => {
        const designA = circuitDemandA(model, zone);
        return zone.cables
          .filter(carriesLoad)
          .flatMap((cable) => cableEvidence(cable, coordination(model, cable), designA));
      }),
};
