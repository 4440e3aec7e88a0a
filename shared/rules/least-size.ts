import type { StationId } from "../board/ids.ts";
import type { CableModel, CircuitModel, Zone } from "../circuit/model.ts";
import { carriesLoad, isLightingPoint } from "../circuit/zone-kinds.ts";
import { leastSizes } from "../trade/least-sizes.ts";
import { at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/** Fixed cable below 1.5 mm² to socket outlets or power, or below 1.0 mm² to lights and what is fed with them. */
export const leastSize: Rule = {
  id: "least-size",
  variants: { power: "fix", lighting: "fix" },
  source: leastSizes.sources.powerCsaMm2,
  check: (model) =>
    model.zones.flatMap((zone) => {
      const toPower = cablesToPower(model, zone);
      return zone.cables.filter(carriesLoad).flatMap((cable): (Evidence | Missing)[] => {
        const { id, csaMm2 } = cable;
        if (csaMm2 === undefined) return [missing(at("cable", id), "csaMm2")];
        const variant = toPower.has(cable) ? "power" : "lighting";
        const leastCsaMm2 = variant === "power" ? leastSizes.powerCsaMm2 : leastSizes.lightingCsaMm2;
        if (csaMm2 >= leastCsaMm2) return [];
        return evidence(variant, [at("cable", id)], { cable: id, csaMm2, leastCsaMm2 });
      });
    }),
};

/** The cables of a zone that lead to any power point. Switch and lamp cables are in no shape and never do. */
function cablesToPower(model: CircuitModel, zone: Zone): Set<CableModel> {
  const { rings, loops, branches } = zone.shape;
  const isPower = (id: StationId): boolean => isPowerPoint(model, id);
  const around = zone.points.some(isPower) ? [...rings, ...loops].flatMap(({ cables }) => cables) : [];
  // How many branches up to each one end at a power point: what is beyond a branch is one stretch of the list.
  const counts = [0];
  for (const { far, isPoint } of branches)
    counts.push((counts.at(-1) ?? 0) + (isPoint && isPower(far) ? 1 : 0));
  const leading = branches.filter(({ index, end }) => counts[end] !== counts[index]);
  return new Set([...around, ...leading.flatMap(({ run }) => run.cables)]);
}

/** Lights are none, nor a fan that goes with them, nor a connection unit that feeds only such or nothing. */
function isPowerPoint(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  if (isLightingPoint(model, id) || station?.settings?.appliance === "extractor-fan") return false;
  if (station?.kind !== "fcu") return true;
  return model.fusedLinks.some(
    ({ fcu, to }) => fcu === id && to.points.some((point) => point !== id && isPowerPoint(model, point)),
  );
}
