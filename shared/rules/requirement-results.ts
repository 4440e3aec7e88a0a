import type { CableId, StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { isServed } from "../circuit/served.ts";
import type { Requirement } from "../wiring/wiring.schema.ts";
import { allAt, at } from "./evidence.ts";
import type { Place } from "./rule.ts";
import type { RequirementResult } from "./verdict.ts";

/**
 * What the task asks for, each with where it is not met. While a contact cannot be read, what is not met by what
 * can be read cannot be told, and a circuit or its shape cannot be told at all.
 */
export const requirementResults = (model: CircuitModel): RequirementResult[] =>
  (model.wiring.wants ?? []).map((requirement) => {
    const places = notMetAt(model, requirement);
    const isBlurred = model.unknown.size > 0 && restsOnContacts(requirement, places);
    const answer = isBlurred ? "cannot-say" : places.length === 0 ? "met" : "not-yet";
    return { requirement, answer, places };
  });

function restsOnContacts({ kind }: Requirement, places: readonly Place[]): boolean {
  if (kind === "one-circuit" || kind === "shape") return true;
  return (kind === "served" || kind === "kept") && places.length > 0;
}

function notMetAt(model: CircuitModel, requirement: Requirement): Place[] {
  const { readings = [], namedFaults = [] } = model.wiring;
  switch (requirement.kind) {
    case "served":
      return allAt(
        "station",
        requirement.stations.filter((id) => !isServed(model, id)),
      );
    case "one-circuit":
      return offCircuit(model, requirement.stations, requirement.way);
    case "shape":
      return hasShape(model, requirement.of, requirement.shape) ? [] : [at("station", requirement.of)];
    case "kept":
      return allAt(
        "cable",
        requirement.cables.filter((id) => !isKept(model, id)),
      );
    case "device": {
      const ratingA = model.stations.get(requirement.way)?.settings?.deviceRatingA;
      const isMet = ratingA !== undefined && requirement.ratingA.includes(ratingA);
      return isMet ? [] : [at("station", requirement.way)];
    }
    case "readings": {
      const done = readings.filter(({ way }) => way === requirement.way).map(({ test }) => test);
      return requirement.tests.every((test) => done.includes(test)) ? [] : [at("station", requirement.way)];
    }
    case "fault-named":
      return allAt(
        "station",
        requirement.faults.filter((fault) => !namedFaults.includes(fault)),
      );
  }
}

/** A cable is kept while a core of it is there; what else it lost the rules say. */
function isKept(model: CircuitModel, id: CableId): boolean {
  return (model.cableById.get(id)?.conductors.length ?? 0) > 0;
}

const zonesOf = (model: CircuitModel, id: StationId): Zone[] =>
  model.zones.filter(({ stations }) => stations.includes(id));

/** Stations that are not on the one way asked for, or not on the way of the first of them. */
function offCircuit(model: CircuitModel, stations: readonly StationId[], way?: StationId): Place[] {
  const waysOf = (id: StationId): StationId[] => [...new Set(zonesOf(model, id).flatMap(({ ways }) => ways))];
  const wanted = way ?? waysOf(stations[0] ?? ("" as StationId))[0];
  return allAt(
    "station",
    stations.filter((id) => {
      const ways = waysOf(id);
      return ways.length !== 1 || ways[0] !== wanted;
    }),
  );
}

function hasShape(model: CircuitModel, of: StationId, shape: "ring" | "radial"): boolean {
  const zone = zonesOf(model, of).find(({ isFused }) => !isFused) ?? zoneBefore(model, of);
  if (!zone || zone.cables.length === 0) return false;
  const { rings, loops } = zone.shape;
  if (shape === "radial") return rings.length === 0 && loops.length === 0;
  return (
    rings.length > 0 &&
    rings.every(({ isBridged, closes }) => !isBridged && Object.values(closes).every(Boolean))
  );
}

/** The unfused side of the way that a station behind a fuse belongs to. */
function zoneBefore(model: CircuitModel, id: StationId): Zone | undefined {
  const [way] = zonesOf(model, id).flatMap(({ ways }) => ways);
  return model.circuits.find((circuit) => circuit.way === way)?.zone;
}
