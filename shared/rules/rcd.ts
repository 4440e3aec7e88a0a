import type { StationId } from "../board/ids.ts";
import { defaults } from "../circuit/defaults.ts";
import type { CableModel, Circuit, CircuitModel } from "../circuit/model.ts";
import { nearestWay } from "../circuit/nearest-way.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import type { Source } from "../trade/source.ts";
import { allAt, at, evidence, missing } from "./evidence.ts";
import type { Evidence, Missing, Rule } from "./rule.ts";

const bathroom: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "701.411.3.3",
  checked: "from memory",
};

/**
 * A way without a 30 mA RCD that feeds socket outlets rated to 32 A, a bath or shower room, lights of a dwelling, or cable
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
  source: {
    kind: "regulation",
    document: "BS 7671:2018",
    clause: "411.3.3, 411.3.4, 415.1, 522.6.202 and 522.6.203",
    checked: "secondary copy",
  },
  variantSources: { bathroom, "bathroom-tt": bathroom },
  isNeverHidden: true,
  check: (model) => {
    const isTt = (model.wiring.supply?.earthing ?? defaults.earthing) === "TT";
    const isCovered = (way: StationId): boolean => {
      const rcdMa = model.stations.get(way)?.settings?.rcdMa ?? defaults.rcdMa;
      return rcdMa > 0 && rcdMa <= rcdLimits.mostRatedMa;
    };
    const asks = (id: StationId): boolean =>
      isOutlet(model, id) || isInBathroom(model, id) || isLightingPoint(model, id);
    // Where ways meet, what hangs on which of them is not known: the one without may feed nothing that asks for it, and
    // where none has one it is said once.
    const heldBack = new Set(
      model.meetings.flatMap(({ ways }) => {
        const told = ways.some(isCovered) ? undefined : nearestWay(model, ways, asks);
        return ways.filter((way) => way !== told);
      }),
    );
    return model.circuits.flatMap((circuit): (Evidence | Missing)[] =>
      isCovered(circuit.way) || heldBack.has(circuit.way) || !circuit.isUsed
        ? []
        : gravest(model, circuit, isTt ? "-tt" : ""),
    );
  },
};

function gravest(model: CircuitModel, circuit: Circuit, suffix: "" | "-tt"): (Evidence | Missing)[] {
  const zones = [circuit.zone, ...circuit.fusedZones];
  const stations = [...new Set(zones.flatMap((zone) => zone.stations))];
  const cables = zones.flatMap((zone) => zone.cables);
  const way = at("station", circuit.way);
  const { mostRatedMa: mostMa, socketOutletsToA: toA, buriedLessThanMm: depthMm } = rcdLimits;
  const outlets = stations.filter((id) => isOutlet(model, id));
  const wet = stations.filter((id) => isInBathroom(model, id));
  const lamps = stations.filter((id) => isLightingPoint(model, id));
  const buried = cables.filter(({ spec }) => spec.depthMm !== undefined && spec.depthMm < depthMm);
  const framed = cables.filter(({ spec }) => spec.inMetalFramedWall === true);
  const say = (reason: string, facts: Evidence["facts"], run: readonly CableModel[] = []): Evidence[] => {
    const ids = run.map(({ id }) => id);
    const all = { way: circuit.way, mostMa, ...facts, ...(ids.length > 0 ? { cables: ids } : {}) };
    return evidence(`${reason}${suffix}`, [way], all, [way, ...allAt("cable", ids)]);
  };
  // It is the rating of the outlet that counts, not of the device: every outlet here is a 13 A one.
  if (outlets.length > 0) return say("socket-outlets", { toA });
  if (wet.length > 0) return say("bathroom", { points: wet });
  if (lamps.length > 0) return say("lighting", {});
  if (buried.length > 0) return say("buried", { depthMm }, buried);
  if (framed.length > 0) return say("metal-framed", {}, framed);
  // An appliance of which nobody has said what it is may be a shower.
  return stations.filter((id) => mayBeShower(model, id)).map((id) => missing(at("station", id), "appliance"));
}

/** A socket outlet, or a cooker control that has one. */
function isOutlet(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  return station?.kind === "socket-outlet" || station?.settings?.hasSocketOutlet === true;
}

function mayBeShower(model: CircuitModel, id: StationId): boolean {
  const station = model.stations.get(id);
  const { appliance, inBathroom } = station?.settings ?? {};
  return station?.kind === "appliance" && appliance === undefined && inBathroom === undefined;
}

/** Stated so, or a shower, which stands nowhere else. */
function isInBathroom(model: CircuitModel, id: StationId): boolean {
  const settings = model.stations.get(id)?.settings;
  return settings?.inBathroom === true || settings?.appliance === "shower";
}
