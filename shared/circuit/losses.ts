import { byId, type ConductorId, type RoleClass, roleClasses, type StationId } from "../board/ids.ts";
import { isTwoSided } from "../board/station-kinds.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { NodeId } from "../wiring/buses.ts";
import { isEnergised } from "./energised.ts";
import type { CircuitModel } from "./model.ts";
import { oncePerModel } from "./once-per-model.ts";
import { switchedNeutrals } from "./switched-neutrals.ts";

/** Stations that lost one class of conductor at the same place. */
export interface Loss {
  class: RoleClass;
  stations: StationId[];
  /** Cores that would bring it, or the crossed conductors in their place; none where no cable goes there. */
  cores: ConductorId[];
}

/** Live buses of a rose or a plate switch; an intermediate switch has straps on two sides. */
const liveBuses = [
  ...["L", "SL", "common", "strap1", "strap2"],
  ...["strap-in.strap1", "strap-in.strap2", "strap-out.strap1", "strap-out.strap2"],
];

const none: readonly string[] = [];

/** The buses of a station of which one has to be reached by a class; none where it has no need of it. */
export const neededBuses = ({ kind }: Station, wanted: RoleClass): readonly string[] => {
  if (kind === "way" || kind === "junction-box") return none;
  if (wanted === "earth") return ["E"];
  if (wanted === "neutral") {
    if (kind === "plate-switch") return none;
    return isTwoSided(kind) ? ["supply.N"] : ["N"];
  }
  if (isTwoSided(kind)) return ["supply.L"];
  return kind === "plate-switch" || kind === "ceiling-rose" ? liveBuses : ["L"];
};

const neededOf = oncePerModel(() => new Map<Station, Record<RoleClass, NodeId[]>>());

/** Those of the needed nodes that a wiring has; each station is asked about by several rules and worked out once. */
export const nodesNeeded = (model: CircuitModel, station: Station, wanted: RoleClass): readonly NodeId[] => {
  const known = neededOf(model);
  const before = known.get(station);
  if (before) return before[wanted];
  const own = model.buses.nodesAt.get(station.id);
  const nodes = (each: RoleClass): NodeId[] =>
    neededBuses(station, each).flatMap((bus) => own?.get(bus)?.id ?? []);
  const needed = { live: nodes("live"), neutral: nodes("neutral"), earth: nodes("earth") };
  known.set(station, needed);
  return needed[wanted];
};

/** True where a way reaches the station by a class, in some position of the switches. */
export const isReachedBy = (model: CircuitModel, station: Station, wanted: RoleClass): boolean =>
  nodesNeeded(model, station, wanted).some((node) => model.reachOf(node).sometimes.length > 0);

/**
 * Stations in use that a class does not reach, though another does; grouped by where it was lost. A lamp whose
 * neutral passes through a switch has its neutral.
 */
export const lossesOf = (model: CircuitModel, wanted: RoleClass): Loss[] => {
  const lost = new Map<number, StationId[]>();
  const switched = new Set(
    switchedNeutrals(model).flatMap(({ switch: station, lamps }) => [station, ...lamps]),
  );
  for (const station of model.stations.values()) {
    if (!model.used.has(station.id)) continue;
    const nodes = nodesNeeded(model, station, wanted);
    const [first] = nodes;
    if (first === undefined) continue;
    if (nodes.some((node) => model.reachOf(node).sometimes.length > 0)) continue;
    if (!isFedAtAll(model, station, wanted)) continue;
    if (wanted !== "earth" && switched.has(station.id)) continue;
    const touched = nodes.find((node) => isTouched(model, node)) ?? first;
    const group = model.groupOf(touched);
    const known = lost.get(group);
    if (known) known.push(station.id);
    else lost.set(group, [station.id]);
  }
  if (lost.size === 0) return [];
  const cores = coresAround(model, wanted, new Set(lost.keys()));
  return [...lost].map(([group, stations]) => ({ class: wanted, stations, cores: cores.get(group) ?? [] }));
};

/** Missing cores that would bring a class to a station, or the crossed conductors in their place. */
export const coresToward = (model: CircuitModel, station: Station, wanted: RoleClass): ConductorId[] => {
  const nodes = nodesNeeded(model, station, wanted);
  const node = nodes.find((each) => isTouched(model, each)) ?? nodes[0];
  const groups = new Set(node === undefined ? [] : [model.groupOf(node)]);
  return [...coresAround(model, wanted, groups).values()].flat();
};

/** Nodes on which a conductor lands. */
const touchedNodes = oncePerModel(
  ({ conductors }): ReadonlySet<NodeId> =>
    new Set(conductors.flatMap(({ fromNode, toNode }) => [fromNode, toNode])),
);
const isTouched = (model: CircuitModel, node: NodeId): boolean => touchedNodes(model).has(node);

function isFedAtAll(model: CircuitModel, station: Station, wanted: RoleClass): boolean {
  const others = roleClasses.filter((other) => other !== wanted);
  // A missing earth is a danger wherever line or neutral arrives, be it on each other's terminal.
  if (wanted === "earth")
    return others.some((other) =>
      nodesNeeded(model, station, other).some((node) => isEnergised(model, node)),
    );
  return others.some((other) => isReachedBy(model, station, other));
}

/** For each group: the missing cores that lead to where the class is, or else those that lead anywhere. */
function coresAround(
  model: CircuitModel,
  wanted: RoleClass,
  groups: ReadonlySet<number>,
): Map<number, ConductorId[]> {
  const reached = new Map<number, Set<ConductorId>>();
  const others = new Map<number, Set<ConductorId>>();
  for (const cable of model.cables)
    for (const core of cable.missing) {
      if (core.class !== wanted) continue;
      const { fromNode, toNode } = core;
      for (const [near, far] of [
        [fromNode, toNode],
        [toNode, fromNode],
      ] as const) {
        const group = model.groupOf(near);
        if (!groups.has(group) || model.groupOf(far) === group) continue;
        const isReached =
          model.buses.nodes.get(far)?.conductor === wanted && model.reachOf(far).sometimes.length > 0;
        const table = isReached ? reached : others;
        const known = table.get(group) ?? new Set();
        for (const id of core.crossedBy.length > 0 ? core.crossedBy : [core.id]) known.add(id);
        table.set(group, known);
      }
    }
  const chosen = [...groups].map((group) => [group, reached.get(group) ?? others.get(group) ?? []] as const);
  return new Map(chosen.map(([group, ids]) => [group, [...ids].sort(byId)]));
}
