import { DisjointSets } from "../wiring/disjoint-sets.ts";
import { eliminate, type Elimination } from "./star-mesh.ts";

export interface Resistor {
  a: number;
  b: number;
  /** Above nought; `Infinity` is an open conductor. */
  resistanceOhm: number;
}

/** A closed device, fuse or switch: no resistance of its own. An open one is simply left out. */
export interface Link {
  a: number;
  b: number;
}

/** A node that the supply holds at a voltage to the reference. */
export interface HeldNode {
  node: number;
  voltageV: number;
}

/** A load of constant current: it takes the current out of the network at `from` and gives it back at `to`. */
export interface CurrentSource {
  from: number;
  to: number;
  currentA: number;
}

export interface Network {
  nodeCount: number;
  resistors: readonly Resistor[];
  links?: readonly Link[];
  held: readonly HeldNode[];
}

export interface NetworkSolution {
  /** Per node, to the reference; 0 where `reached` is 0. */
  voltageV: Float64Array;
  /** Per node: 1 where some held node reaches it, 0 for an island that no supply reaches. */
  reached: Uint8Array;
  /** Per resistor, from a to b. */
  resistorCurrentA: Float64Array;
  /** Per link, from a to b; round a loop of links alone it is shared as equal resistances would share it. */
  linkCurrentA: Float64Array;
  /** Per held node, what it gives to the network. */
  heldCurrentA: Float64Array;
  /** Per source: 1 where the current has no way there and back, so that none flows. */
  stranded: Uint8Array;
}

export interface PreparedNetwork {
  solve(sources?: readonly CurrentSource[]): NetworkSolution;
  /** Per node, the resistance between it and all held nodes together; Infinity where none reaches it. */
  ownOhm(): Float64Array;
}

/** Two held nodes of different voltage are linked without resistance: no finite current solves that. */
export class LinkedSupplyError extends Error {
  readonly code = "linked-supplies";
  constructor(
    readonly nodeA: number,
    readonly nodeB: number,
  ) {
    super(`nodes ${nodeA} and ${nodeB} are held at different voltages and linked without resistance`);
  }
}

/**
 * Prepares a resistive network for any number of load cases: Kirchhoff's current law at every node (nodal
 * analysis), nodes joined by links taken as one, the rest eliminated one by one (star-mesh).
 * Holds for islands, loops, parallel leads and sources without a return path. Throws `LinkedSupplyError`.
 */
export function prepareNetwork(network: Network): PreparedNetwork {
  const { nodeCount, resistors, held } = network;
  const links = network.links ?? [];
  const group = groupByLinks(nodeCount, links);
  // Plain arrays here and below: a typed one takes twice as long to make, which on a small network is what counts.
  const heldBy = new Array<number>(nodeCount).fill(-1);
  for (let index = 0; index < held.length; index++) {
    const { node, voltageV } = held[index]!;
    const at = group[node]!;
    const other = heldBy[at]!;
    if (other < 0) heldBy[at] = index;
    else if (held[other]!.voltageV !== voltageV) throw new LinkedSupplyError(held[other]!.node, node);
  }
  const conductanceS = new Array<number>(resistors.length);
  const from = new Array<number>(resistors.length);
  const to = new Array<number>(resistors.length);
  for (let index = 0; index < resistors.length; index++) {
    const resistor = resistors[index]!;
    if (!(resistor.resistanceOhm > 0)) throw new RangeError(`resistor ${index} is not above 0 ohm`);
    conductanceS[index] = 1 / resistor.resistanceOhm;
    from[index] = group[resistor.a]!;
    to[index] = group[resistor.b]!;
  }
  const elimination = eliminate({ nodeCount, from, to, conductanceS, heldBy });
  const linkNetwork = links.length > 0 ? eliminateLinks(nodeCount, links, group) : undefined;
  const ready = { network, links, group, heldBy, from, to, conductanceS, elimination, linkNetwork };
  // What no load changes is worked out before the first one, and only once one is asked for.
  let fixed: Fixed | undefined;
  return {
    ownOhm: () => {
      const own = elimination.ownOhm();
      const ownByNode = new Float64Array(nodeCount);
      for (let node = 0; node < nodeCount; node++) ownByNode[node] = own[group[node]!]!;
      return ownByNode;
    },
    solve: (sources = []) => solve(ready, (fixed ??= fixedOf(ready)), sources),
  };
}

/** One load case of a network; see `prepareNetwork`. */
export function solveNetwork(network: Network, sources: readonly CurrentSource[] = []): NetworkSolution {
  return prepareNetwork(network).solve(sources);
}

interface Prepared {
  network: Network;
  links: readonly Link[];
  group: Int32Array;
  heldBy: readonly number[];
  from: readonly number[];
  to: readonly number[];
  conductanceS: readonly number[];
  elimination: Elimination;
  linkNetwork: Elimination | undefined;
}

/** What is the same in every load case. */
interface Fixed {
  /** Per group, what the held nodes press into it through the resistors between. */
  heldIntoA: readonly number[];
  reached: Uint8Array;
  /** Ends of the resistors as they were given, not by group. */
  resistorA: readonly number[];
  resistorB: readonly number[];
}

/** What one load case after another is worked out in, of whatever network; nothing of one is read by the next. */
const room = { intoA: new Float64Array(0), residualA: new Float64Array(0), givenA: new Float64Array(0) };

function roomFor(nodeCount: number): typeof room {
  if (room.intoA.length < nodeCount) {
    room.intoA = new Float64Array(2 * nodeCount);
    room.residualA = new Float64Array(2 * nodeCount);
    room.givenA = new Float64Array(2 * nodeCount);
  }
  return room;
}

function fixedOf(prepared: Prepared): Fixed {
  const { network, links, group, heldBy, from, to, conductanceS, elimination } = prepared;
  const { nodeCount, held, resistors } = network;
  const heldIntoA = new Array<number>(nodeCount).fill(0);
  for (let index = 0; index < from.length; index++) {
    const a = from[index]!;
    const b = to[index]!;
    if (a === b) continue;
    if (heldBy[a]! >= 0) heldIntoA[b]! += conductanceS[index]! * held[heldBy[a]!]!.voltageV;
    if (heldBy[b]! >= 0) heldIntoA[a]! += conductanceS[index]! * held[heldBy[b]!]!.voltageV;
  }
  // Without links a group is its node, and all of it stands ready.
  if (links.length === 0) return { heldIntoA, reached: elimination.reached, resistorA: from, resistorB: to };
  const reached = new Uint8Array(nodeCount);
  for (let node = 0; node < nodeCount; node++) reached[node] = elimination.reached[group[node]!]!;
  return {
    heldIntoA,
    reached,
    resistorA: resistors.map(({ a }) => a),
    resistorB: resistors.map(({ b }) => b),
  };
}

function solve(prepared: Prepared, fixed: Fixed, sources: readonly CurrentSource[]): NetworkSolution {
  const { network, group, heldBy, from, to, conductanceS, elimination, linkNetwork } = prepared;
  const { heldIntoA, reached, resistorA, resistorB } = fixed;
  const { nodeCount, held } = network;
  const { intoA, residualA, givenA } = roomFor(nodeCount);
  for (let node = 0; node < nodeCount; node++) intoA[node] = heldIntoA[node]!;
  residualA.fill(0, 0, nodeCount);
  const stranded = new Uint8Array(sources.length);
  for (let index = 0; index < sources.length; index++) {
    const source = sources[index]!;
    if (!reached[source.from] || !reached[source.to]) {
      stranded[index] = 1;
      continue;
    }
    intoA[group[source.from]!]! -= source.currentA;
    intoA[group[source.to]!]! += source.currentA;
    residualA[source.from]! -= source.currentA;
    residualA[source.to]! += source.currentA;
  }
  const groupV = elimination.voltages(intoA);
  for (let index = 0; index < held.length; index++) {
    const at = group[held[index]!.node]!;
    if (heldBy[at] === index) groupV[at] = held[index]!.voltageV;
  }
  const resistorCurrentA = new Float64Array(from.length);
  for (let index = 0; index < from.length; index++) {
    const currentA = (groupV[from[index]!]! - groupV[to[index]!]!) * conductanceS[index]!;
    resistorCurrentA[index] = currentA;
    residualA[resistorA[index]!]! -= currentA;
    residualA[resistorB[index]!]! += currentA;
  }
  const { voltageV, heldCurrentA, linkCurrentA } = linkNetwork
    ? throughLinks(prepared, reached, linkNetwork, { groupV, residualA, givenA })
    : { voltageV: groupV, heldCurrentA: givenByHeld(held, heldBy, residualA), linkCurrentA: noLinksA };
  return { voltageV, reached, resistorCurrentA, linkCurrentA, heldCurrentA, stranded };
}

const noLinksA = new Float64Array(0);

/** What each held node gives where no link joins any: what its resistors and sources leave there. */
function givenByHeld(
  held: readonly HeldNode[],
  heldBy: readonly number[],
  residualA: Float64Array,
): Float64Array {
  const givenA = new Float64Array(held.length);
  for (let index = 0; index < held.length; index++) {
    const { node } = held[index]!;
    if (heldBy[node] === index) givenA[index] = 0 - residualA[node]!;
  }
  return givenA;
}

/** Node by node what was worked out group by group, and what passes through the links. `residualA` is used up. */
function throughLinks(
  { network, links, group, heldBy }: Prepared,
  reached: Uint8Array,
  linkNetwork: Elimination,
  { groupV, residualA, givenA }: Record<"groupV" | "residualA" | "givenA", Float64Array>,
): Pick<NetworkSolution, "voltageV" | "heldCurrentA" | "linkCurrentA"> {
  const { nodeCount, held } = network;
  givenA.fill(0, 0, nodeCount);
  for (let node = 0; node < nodeCount; node++) givenA[group[node]!]! -= residualA[node]!;
  const heldCurrentA = new Float64Array(held.length);
  for (let index = 0; index < held.length; index++) {
    const { node } = held[index]!;
    if (heldBy[group[node]!] !== index) continue;
    heldCurrentA[index] = givenA[group[node]!]!;
    residualA[node]! += heldCurrentA[index]!;
  }
  const levels = linkNetwork.voltages(residualA);
  const linkCurrentA = new Float64Array(links.length);
  for (let index = 0; index < links.length; index++)
    linkCurrentA[index] = levels[links[index]!.a]! - levels[links[index]!.b]!;
  const voltageV = new Float64Array(nodeCount);
  for (let node = 0; node < nodeCount; node++) voltageV[node] = reached[node] ? groupV[group[node]!]! : 0;
  return { voltageV, heldCurrentA, linkCurrentA };
}

/** Each number at its own place, as far as any network without links asked for it; never written to by others. */
let ownNumbers = new Int32Array(0);

/** Gives every node the number of its group of linked nodes (the number of one of them); may go on beyond the last. */
function groupByLinks(nodeCount: number, links: readonly Link[]): Int32Array {
  if (links.length === 0) {
    if (ownNumbers.length < nodeCount) ownNumbers = new Int32Array(2 * nodeCount).map((_, node) => node);
    return ownNumbers;
  }
  const sets = new DisjointSets(nodeCount);
  for (const { a, b } of links) sets.join(a, b);
  const group = new Int32Array(nodeCount);
  for (let node = 0; node < nodeCount; node++) group[node] = sets.find(node);
  return group;
}

/** The links alone, each as 1 S and one node of each group held: shares the currents that pass through them. */
function eliminateLinks(nodeCount: number, links: readonly Link[], group: Int32Array): Elimination {
  const heldBy = new Array<number>(nodeCount).fill(-1);
  for (let node = 0; node < nodeCount; node++) heldBy[group[node]!] = 0;
  return eliminate({
    nodeCount,
    from: links.map(({ a }) => a),
    to: links.map(({ b }) => b),
    conductanceS: links.map(() => 1),
    heldBy,
  });
}
