import type { StationId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import type { Circuit, CircuitModel } from "../circuit/model.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

/**
 * A way without a 30 mA RCD that feeds socket outlets to 32 A, a bath or shower room, lights of a dwelling, or cable
 * that a nail can reach. One finding a way, for its gravest reason; on TT it is a danger.
 */
export const rcd: Rule = {
  id: "rcd",
  variants: {
    "socket-outlets": "fix",
    bathroom: "fix",
    lighting: "fix",
    buried: "fix",
    "metal-framed": "fix",
    "socket-outlets-tt": "danger",
    "bathroom-tt": "danger",
    "lighting-tt": "danger",
    "buried-tt": "danger",
    "metal-framed-tt": "danger",
  },
  source: rcdLimits.sources.socketOutletsToA,
  check: (model) => {
    const isTt = (model.wiring.supply?.earthing ?? defaults.earthing) === "TT";
    return model.circuits.flatMap((circuit): (Evidence | Missing)[] => {
      const rcdMa = model.stations.get(circuit.way)?.settings?.rcdMa ?? defaults.rcdMa;
      const isCovered = rcdMa > 0 && rcdMa <= rcdLimits.mostRatedMa;
      return isCovered || !circuit.isUsed ? [] : gravest(model, circuit, isTt ? "-tt" : "");
    });
  },
};

function gravest(model: CircuitModel, circuit: Circuit, suffix: "" | "-tt"): (Evidence | Missing)[] {
  const zones = [circuit.zone, ...circuit.fusedZones];
  const stations = [...new Set(zones.flatMap((zone) => zone.stations))];
  const cables = zones.flatMap((zone) => zone.cables);
  const way = at("station", circuit.way);
  const { mostRatedMa: mostMa, socketOutletsToA: toA, buriedLessThanMm: depthMm } = rcdLimits;
  const deviceA = model.stations.get(circuit.way)?.settings?.deviceRatingA;
  const outlets = stations.filter((id) => isOutlet(model, id));
  const wet = stations.filter((id) => isInBathroom(model, id));
  const lamps = stations.filter((id) => isLightingPoint(model, id));
  const buried = cables.filter(({ spec }) => spec.depthMm !== undefined && spec.depthMm < depthMm);
  const framed = cables.filter(({ spec }) => spec.inMetalFramedWall === true);
  const say = (reason: string, facts: Evidence["facts"], ids: readonly string[] = []): Evidence[] => {
    const places = [way, ...allAt("cable", ids)];
    return evidence(`${reason}${suffix}`, [way], { way: circuit.way, mostMa, ...facts }, places);
  };
  if (outlets.length > 0 && deviceA !== undefined && deviceA <= toA) return say("socket-outlets", { toA });
  if (wet.length > 0) return say("bathroom", { points: wet });
  if (lamps.length > 0) return say("lighting", {});
  const ids = (list: typeof cables) => list.map(({ id }) => id);
  if (buried.length > 0) return say("buried", { depthMm }, ids(buried));
  if (framed.length > 0) return say("metal-framed", {}, ids(framed));
  return outlets.length > 0 && deviceA === undefined ? [missing(way, "deviceRatingA")] : [];
}

/** A socket outlet, or a cooker control that has one. */
function isOutlet(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  return station?.kind === "socket-outlet" || station?.settings?.hasSocketOutlet === true;
}

/** Stated so, or a shower, which stands nowhere else. */
function isInBathroom(model: CircuitModel, id: StationId): boolean {
  const settings = model.stations.get(id)?.settings;
  return settings?.inBathroom === true || settings?.appliance === "shower";
}
