import type { CableId, StationId } from "../board/ids.ts";
import { earthBar, neutralBar, type NodeId, nodeId, sourceLine } from "../wiring/buses.ts";
import { defaults } from "../circuit/defaults.ts";
import { assumptions } from "../trade/assumptions.ts";
import { copperResistanceMilliohmPerM } from "../trade/resistance.ts";
import { supply } from "../trade/supply.ts";
import type { Supply } from "../wiring/wiring.schema.ts";
import type { Conductor, Copper, CopperLink } from "./copper.ts";
import {
  type CurrentSource,
  type Network,
  type NetworkSolution,
  prepareNetwork,
  type PreparedNetwork,
} from "./network.ts";

/** No conductor is taken as less: a joint of good copper has about that much. */
export const leastConductorOhm = 0.001;

export interface WiringConditions {
  /** Of the conductors: one for all, or by cable. */
  temperatureC: number | ((cable: CableId) => number);
  /** Positions of switches that have two; 1 where none is said. */
  positions?: ReadonlyMap<StationId, 0 | 1>;
  /** Devices, fuses and contacts that stand open. */
  openLinks?: ReadonlySet<CopperLink>;
  /**
   * Impedance of the supply before the origin, which bounds the current of a short. Left out: the origin itself is
   * held at 230 V, as for a drop from the origin.
   */
  supply?: Supply;
  /** Loads as impedances, by the pair of nodes they stand between. */
  impedances?: readonly { from: number; to: number; resistanceOhm: number }[];
}

/** A wiring as a network; the arrays of conductors and links run along those of the copper. */
export interface WiringNetwork {
  copper: Copper;
  network: Network;
  prepared: PreparedNetwork;
  /** With no load that takes a constant current. */
  open: NetworkSolution;
  origin: { line: number; neutral: number; earth: number };
  /** Cables whose size or length nobody has said; they are taken as having no resistance to speak of. */
  unknownCables: Set<CableId>;
  /** Per link of the copper its place among the closed links, -1 where it is open. */
  closedIndex: Int32Array;
}

/**
 * End-to-end resistance of one conductor in ohms: BS EN 60228 maximum at 20 °C x (1 + 0.004 (T - 20)) x length, and
 * its joint. Never below 1 milliohm; undefined where size or length are not known.
 */
export function conductorOhm(conductor: Conductor, temperatureC: number): number | undefined {
  const { csaMm2, lengthM, jointOhm } = conductor;
  if (jointOhm === Infinity) return Infinity;
  if (csaMm2 === undefined || lengthM === undefined) return undefined;
  const milliohmPerM = copperResistanceMilliohmPerM(csaMm2, temperatureC);
  if (milliohmPerM === undefined) return undefined;
  return Math.max(leastConductorOhm, (milliohmPerM * lengthM) / 1000 + jointOhm);
}

/** True where a link is closed: always, or in the position its switch stands in. */
export function isClosed(
  link: CopperLink,
  conditions: Pick<WiringConditions, "positions" | "openLinks">,
): boolean {
  if (conditions.openLinks?.has(link)) return false;
  return link.closedIn === undefined || link.closedIn === (conditions.positions?.get(link.station) ?? 1);
}

/**
 * Line, neutral and protective conductors of a wiring as one resistive network: cores as resistors, accessory buses
 * as nodes, devices, fuses and switches as links. The origin's line is held at 230 V (behind the impedance of the
 * supply where that is passed), its neutral and earth bars at 0 V (TT: earth through its electrode).
 */
export function wiringNetwork(copper: Copper, conditions: WiringConditions): WiringNetwork {
  const { temperatureC } = conditions;
  const unknownCables = new Set<CableId>();
  const resistors = copper.conductors.map((conductor) => {
    const atC = typeof temperatureC === "number" ? temperatureC : temperatureC(conductor.cable);
    const resistanceOhm = conductorOhm(conductor, atC);
    if (resistanceOhm === undefined) unknownCables.add(conductor.cable);
    return { a: conductor.fromNode, b: conductor.toNode, resistanceOhm: resistanceOhm ?? leastConductorOhm };
  });
  for (const each of conditions.impedances ?? []) {
    resistors.push({ a: each.from, b: each.to, resistanceOhm: each.resistanceOhm });
  }
  const closedIndex = new Int32Array(copper.links.length).fill(-1);
  const links: Network["links"] & object[] = [];
  copper.links.forEach((link, index) => {
    if (!isClosed(link, conditions)) return;
    closedIndex[index] = links.length;
    links.push({ a: link.fromNode, b: link.toNode });
  });
  const at = (id: NodeId): number => copper.nodeIndex.get(id)!;
  const origin = { line: at(sourceLine), neutral: at(neutralBar), earth: at(earthBar) };
  const held = [{ node: origin.neutral, voltageV: 0 }];
  let nodeCount = copper.nodes.length;
  const behind = (node: number, voltageV: number, ohm: number): void => {
    if (ohm === 0) held.push({ node, voltageV });
    else {
      resistors.push({ a: nodeCount, b: node, resistanceOhm: Math.max(leastConductorOhm, ohm) });
      held.push({ node: nodeCount++, voltageV });
    }
  };
  const { earthing = defaults.earthing, zeOhm, electrodeOhm } = conditions.supply ?? { zeOhm: 0 };
  // On TT line to neutral has the impedance of the supply too; the one of TN-C-S is taken.
  const beforeOhm = zeOhm ?? (defaults.zeOhm[earthing] || assumptions.zeOhm);
  behind(origin.line, supply.nominalV, beforeOhm);
  behind(origin.earth, 0, earthing === "TT" ? (electrodeOhm ?? 0) : 0);
  const network = { nodeCount, resistors, links, held };
  const prepared = prepareNetwork(network);
  return { copper, network, prepared, open: prepared.solve(), origin, unknownCables, closedIndex };
}

/** What flows where; arrays run along the conductors and links of the copper. */
export interface WiringSolution {
  /** Per conductor, from its `from` to its `to`. */
  conductorA: Float64Array;
  /** Per link, from its `from` to its `to`; 0 where it is open. */
  linkA: Float64Array;
  /** Per node of the copper, to the neutral bar. */
  nodeV: Float64Array;
  reached: Uint8Array;
  /** Voltage between line and neutral at the origin. */
  originV: number;
}

/** A load that takes a constant current between two nodes at full voltage. */
export interface CurrentLoad {
  lineNode: number;
  neutralNode: number;
  currentA: number;
}

/**
 * Currents and voltages with loads of constant current. A load takes its current in the proportion its open voltage
 * bears to 230 V: none where a conductor is missing, the other way round where line and neutral are swapped.
 */
export function solveWiring(net: WiringNetwork, loads: readonly CurrentLoad[]): WiringSolution {
  const { open } = net;
  const sources = loads.map(({ lineNode, neutralNode, currentA }): CurrentSource => {
    const isFed = open.reached[lineNode] && open.reached[neutralNode];
    const openV = isFed ? open.voltageV[lineNode]! - open.voltageV[neutralNode]! : 0;
    return { from: lineNode, to: neutralNode, currentA: (currentA * openV) / supply.nominalV };
  });
  return wiringSolution(net, net.prepared.solve(sources));
}

/** Reads a solution of the network along the wiring's own lists. */
export function wiringSolution(net: WiringNetwork, solved: NetworkSolution): WiringSolution {
  const { copper, origin, closedIndex } = net;
  const linkA = new Float64Array(copper.links.length);
  closedIndex.forEach((at, index) => {
    if (at >= 0) linkA[index] = solved.linkCurrentA[at]!;
  });
  return {
    conductorA: solved.resistorCurrentA.subarray(0, copper.conductors.length),
    linkA,
    nodeV: solved.voltageV.subarray(0, copper.nodes.length),
    reached: solved.reached.subarray(0, copper.nodes.length),
    originV: solved.voltageV[origin.line]! - solved.voltageV[origin.neutral]!,
  };
}

/** The largest current in any core of each cable, in amperes. */
export function cableCurrents(copper: Copper, { conductorA }: WiringSolution): Map<CableId, number> {
  const mostA = new Map<CableId, number>();
  copper.conductors.forEach(({ cable }, index) => {
    mostA.set(cable, Math.max(mostA.get(cable) ?? 0, Math.abs(conductorA[index]!)));
  });
  return mostA;
}

/** Where current is taken at a station: its line and neutral node, or undefined where it has none. */
export function loadNodes(
  copper: Copper,
  station: StationId,
): { lineNode: number; neutralNode: number } | undefined {
  const kind = copper.stations.get(station)?.kind;
  if (kind === undefined || kind === "plate-switch" || kind === "way") return undefined;
  const side = kind === "fcu" || kind === "isolator" || kind === "cooker-control" ? "load." : "";
  const line = kind === "ceiling-rose" ? "SL" : "L";
  const lineNode = copper.nodeIndex.get(nodeId(station, `${side}${line}`));
  const neutralNode = copper.nodeIndex.get(nodeId(station, `${side}N`));
  return lineNode === undefined || neutralNode === undefined ? undefined : { lineNode, neutralNode };
}

/** Voltage lost from the origin to a load, both ways, in volts; undefined where it has no line or no neutral. */
export function dropV(
  solution: WiringSolution,
  nodes: { lineNode: number; neutralNode: number },
): number | undefined {
  const { lineNode, neutralNode } = nodes;
  if (!solution.reached[lineNode] || !solution.reached[neutralNode]) return undefined;
  return solution.originV - (solution.nodeV[lineNode]! - solution.nodeV[neutralNode]!);
}
