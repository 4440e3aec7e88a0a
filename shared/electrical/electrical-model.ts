import type { StationId } from "../board/ids.ts";
import { nodeId } from "../wiring/buses.ts";
import { defaults } from "../circuit/defaults.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { supply } from "../trade/supply.ts";
import type { Load } from "../wiring/wiring.schema.ts";
import { type Copper, copperOfModel } from "./copper.ts";
import { litPositions } from "./lit-positions.ts";
import { oncePerModel } from "../circuit/once-per-model.ts";
import { loadNodes, type WiringNetwork, wiringNetwork } from "./wiring-network.ts";

/** The wiring of a model as a network with its conductors at 70 °C, held at the origin, all lamps on. */
export interface ElectricalModel {
  copper: Copper;
  net: WiringNetwork;
  /** Per node, the resistance of all ways back to the origin's line, neutral or earth it is joined to. */
  ownOhm: Float64Array;
  /** Nodes of each station, by what they are to the circuit. */
  nodesOf: ReadonlyMap<StationId, { live: number[]; earth: number | undefined }>;
  /** Connection units that are fed at their load side. */
  reversed: ReadonlySet<StationId>;
}

/** The network that verdicts are worked out on; worked out once for a model. */
export const electricalOf = oncePerModel((model): ElectricalModel => {
  const copper = copperOfModel(model);
  const net = wiringNetwork(copper, {
    temperatureC: conductorTemperature.longLifeC,
    positions: litPositions(copper),
  });
  const reversed = new Set(model.fusedLinks.filter(({ isReversed }) => isReversed).map(({ fcu }) => fcu));
  return { copper, net, ownOhm: net.prepared.ownOhm(), nodesOf: nodesByStation(copper), reversed };
});

function nodesByStation({ buses, nodes }: Copper): ElectricalModel["nodesOf"] {
  const byStation = new Map<StationId, { live: number[]; earth: number | undefined }>();
  nodes.forEach((id, index) => {
    const { station, conductor } = buses.nodes.get(id)!;
    if (station === undefined || conductor === "neutral") return;
    const known = byStation.get(station) ?? { live: [], earth: undefined };
    if (conductor === "live") known.live.push(index);
    else known.earth = index;
    byStation.set(station, known);
  });
  return byStation;
}

/**
 * Current in amperes of the loads stated at a station, at 230 V; a lighting point without one has a lamp of 100 W.
 * Undefined where nothing is stated.
 */
export function statedCurrentA(
  model: CircuitModel,
  station: StationId,
  loads: readonly Load[] | undefined = model.loadsAt.get(station),
): number | undefined {
  if (loads) return loads.reduce((sumW, { powerW }) => sumW + powerW, 0) / supply.nominalV;
  return isLightingPoint(model, station) ? defaults.lampW / supply.nominalV : undefined;
}

/** Where a point is on the part of the circuit that feeds it: for a connection unit its supply side. */
export function pointNodes(
  { copper, reversed }: ElectricalModel,
  model: CircuitModel,
  station: StationId,
): { lineNode: number; neutralNode: number } | undefined {
  if (model.stations.get(station)?.kind !== "fcu") return loadNodes(copper, station);
  const side = reversed.has(station) ? "load" : "supply";
  const lineNode = copper.nodeIndex.get(nodeId(station, `${side}.L`));
  const neutralNode = copper.nodeIndex.get(nodeId(station, `${side}.N`));
  return lineNode === undefined || neutralNode === undefined ? undefined : { lineNode, neutralNode };
}
