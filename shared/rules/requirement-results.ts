import type { CableId, StationId } from "../board/ids.ts";
import type { CircuitModel, Zone } from "../circuit/model.ts";
import { isServed } from "../circuit/served.ts";
import type { Requirement, Wiring } from "../wiring/wiring.schema.ts";
import { allAt } from "./evidence.ts";
import { type Held, isBehindFuse, isInRing, isOnOwnSpur } from "./requirement-feeds.ts";
import { type Looked, notSized, type Shortfall, tooLarge } from "./requirement-sizes.ts";
import { switchedAlone } from "./requirement-switch.ts";
import type { Place } from "./rule.ts";
import type { RequirementResult } from "./verdict.ts";

/**
 * What the task asks for, each with where it is not met. While a contact cannot be read, what is not met by what
 * can be read cannot be told, and what hangs on the shape of a circuit cannot be told at all; nor can what hangs on a
 * value that nobody has said. `look` gives what the rules say of the same wiring in another size of cable.
 */
export const requirementResults = (
  model: CircuitModel,
  looked: Looked,
  look: (wiring: Wiring) => Looked,
): RequirementResult[] =>
  (model.wiring.wants ?? []).map((requirement) => {
    const { places, unsure } = shortfallOf(model, requirement, looked, look);
    const isBlurred = model.unknown.size > 0 && restsOnContacts(requirement, places);
    if (isBlurred) return { requirement, answer: "cannot-say", places };
    if (places.length > 0) return { requirement, answer: "not-yet", places };
    return { requirement, answer: unsure.length > 0 ? "cannot-say" : "met", places: unsure };
  });

/** Asked of what the learner sets or says, not of what is plugged. */
const isSaid = ({ kind }: Requirement): boolean =>
  kind === "device" || kind === "readings" || kind === "fault-named";

function restsOnContacts(requirement: Requirement, places: readonly Place[]): boolean {
  const { kind } = requirement;
  if (kind === "served" || kind === "kept") return places.length > 0;
  return !isSaid(requirement);
}

const short = (places: Place[]): Shortfall => ({ places, unsure: [] });

/** Stations of which something does not hold, and those of which that is not known. */
const whereNot = (stations: readonly StationId[], holds: (id: StationId) => Held): Shortfall => {
  const answers = stations.map((id) => [id, holds(id)] as const);
  const those = (held: Held): Place[] =>
    allAt(
      "station",
      answers.flatMap(([id, answer]) => (answer === held ? [id] : [])),
    );
  return { places: those(false), unsure: those(undefined) };
};

function shortfallOf(
  model: CircuitModel,
  requirement: Requirement,
  looked: Looked,
  look: (wiring: Wiring) => Looked,
): Shortfall {
  const { readings = [], namedFaults = [] } = model.wiring;
  const settingsOf = (id: StationId) => model.stations.get(id)?.settings;
  switch (requirement.kind) {
    case "served":
      return whereNot(requirement.stations, (id) => isServed(model, id));
    case "one-circuit":
      return short(offCircuit(model, requirement.stations, requirement.way));
    case "shape":
      return whereNot([requirement.of], (id) => hasShape(model, id, requirement.shape));
    case "in-ring":
      return whereNot(requirement.stations, (id) => isInRing(model, id));
    case "unfused-spur":
      return whereNot(requirement.stations, (id) => isOnOwnSpur(model, id));
    case "through-fcu": {
      const { stations, fcu: wanted } = requirement;
      return whereNot(stations, (id) =>
        isBehindFuse(model, id, (fcu) => wanted === undefined || fcu === wanted),
      );
    }
    case "own-switch": {
      const { stations, by } = requirement;
      const switched = switchedAlone(model, stations, by);
      return whereNot(stations, (id) => switched.has(id));
    }
    case "fuse":
      return whereNot(requirement.stations, (id) =>
        isBehindFuse(model, id, (fcu) => isAtMost(settingsOf(fcu)?.fuseRatingA, requirement.mostA)),
      );
    case "device":
      return whereNot([requirement.way], (way) => {
        const ratingA = settingsOf(way)?.deviceRatingA;
        return ratingA === undefined ? undefined : requirement.ratingA.includes(ratingA);
      });
    case "sized":
      return notSized(model, requirement.way, looked);
    case "thrift":
      return tooLarge(model, requirement, looked, look);
    case "kept":
      return short(
        allAt(
          "cable",
          requirement.cables.filter((id) => !isKept(model, id)),
        ),
      );
    case "readings": {
      const done = readings.filter(({ way }) => way === requirement.way).map(({ test }) => test);
      return whereNot([requirement.way], () => requirement.tests.every((test) => done.includes(test)));
    }
    case "fault-named":
      return short(
        allAt(
          "station",
          requirement.faults.filter((fault) => !namedFaults.includes(fault)),
        ),
      );
  }
}

const isAtMost = (ratingA: number | undefined, mostA: number): Held =>
  ratingA === undefined ? undefined : ratingA <= mostA;

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
