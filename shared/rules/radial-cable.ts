import { coordination } from "../circuit/coordination.ts";
import { carriesLoad, hasSocketOutlet } from "../circuit/zone-kinds.ts";
import { circuitDemandA } from "../electrical/load-demand.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import type { CableModel, Zone } from "../circuit/model.ts";
import { cableEvidence } from "./cable-evidence.ts";
import { lackingOf } from "./lacking-sizes.ts";
import type { Missing, Rule } from "./rule.ts";

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
      const lacking = undecided(zone);
      return zone.cables
        .filter((cable) => carriesLoad(cable) && !inSpurs.has(cable))
        .flatMap((cable) => {
          const coordinated = coordination(model, cable);
          const mayBeSpur =
            coordinated.is === "protected" || coordinated.is === "unknown" ? undefined : lacking.get(cable);
          return mayBeSpur ?? cableEvidence(cable, coordinated, designA);
        });
    }),
};

/** Cables of branches that may be spurs or not, with what would tell. */
function undecided(zone: Zone): Map<CableModel, Missing[]> {
  const found = new Map<CableModel, Missing[]>();
  for (const branch of zone.spurs.lacking) {
    const lacking = lackingOf(branch, zone);
    const own = zone.shape.branches.slice(branch.index, branch.end);
    for (const cable of own.flatMap(({ run }) => run.cables)) found.set(cable, lacking);
  }
  return found;
}
