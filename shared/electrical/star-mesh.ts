import { DegreeQueue } from "./degree-queue.ts";
import { ResistorList } from "./resistor-list.ts";

export interface Conductances {
  nodeCount: number;
  /** Per conductance its two nodes; equal nodes and 0 S are passed over. */
  from: Int32Array;
  to: Int32Array;
  conductanceS: Float64Array;
  /** Per node: 0 or more where a supply holds it, -1 where it floats freely. */
  heldBy: Int32Array;
}

export interface Elimination {
  /** Per node: 1 where a held node reaches it. Held nodes themselves read 0. */
  reached: Uint8Array;
  /**
   * Node voltages for currents put into the nodes (a held neighbour counts as conductance x its voltage).
   * Held nodes and islands that no supply reaches read 0. `intoA` is used up.
   */
  voltages(intoA: Float64Array): Float64Array;
  /** Per node, the resistance between it and all held nodes together: 0 at a held node, Infinity where none reaches. */
  ownOhm(): Float64Array;
}

/**
 * Eliminates nodes by the star-mesh transform (Rosen 1924; it is Gaussian elimination of the nodal equations):
 * a node with neighbours of conductance g_i and G = sum g_i is replaced by g_i g_j / G between each pair.
 * Nothing is ever subtracted, so rounding stays small beside 1 milliohm resistors. The node with the fewest
 * neighbours goes first: trees and rings take linear time.
 */
export function eliminate({ nodeCount, from, to, conductanceS, heldBy }: Conductances): Elimination {
  const resistors = new ResistorList(nodeCount, from.length);
  const toHeldS = new Float64Array(nodeCount);
  for (let index = 0; index < from.length; index++) {
    const a = from[index]!;
    const b = to[index]!;
    const valueS = conductanceS[index]!;
    if (a === b || valueS === 0) continue;
    if (heldBy[a]! < 0 && heldBy[b]! < 0) resistors.join(a, b, valueS);
    else if (heldBy[a]! < 0) toHeldS[a]! += valueS;
    else if (heldBy[b]! < 0) toHeldS[b]! += valueS;
  }
  const queue = new DegreeQueue(nodeCount);
  for (let node = nodeCount - 1; node >= 0; node--)
    if (heldBy[node]! < 0) queue.put(node, resistors.degree[node]!);

  const order: number[] = [];
  const start: number[] = [];
  const totalS: number[] = [];
  const neighbours: number[] = [];
  const shares: number[] = [];
  for (let node = queue.take(); node >= 0; node = queue.take()) {
    const { around, valueS } = resistors.remove(node);
    let sumS = toHeldS[node]!;
    for (const each of valueS) sumS += each;
    order.push(node);
    start.push(neighbours.length);
    totalS.push(sumS);
    for (let i = 0; i < around.length; i++) {
      const share = valueS[i]! / sumS;
      neighbours.push(around[i]!);
      shares.push(share);
      toHeldS[around[i]!]! += share * toHeldS[node]!;
    }
    resistors.mesh(around, valueS, sumS);
    for (const other of around) queue.put(other, resistors.degree[other]!);
  }
  start.push(neighbours.length);

  const reached = new Uint8Array(nodeCount);
  for (let step = order.length - 1; step >= 0; step--) {
    // The first neighbour was eliminated later, so its answer is known; all of them share one island.
    const node = order[step]!;
    const hasNeighbour = start[step + 1]! > start[step]!;
    reached[node] = toHeldS[node]! > 0 || (hasNeighbour && reached[neighbours[start[step]!]!]) ? 1 : 0;
  }
  const voltages = (intoA: Float64Array): Float64Array => {
    for (let step = 0; step < order.length; step++) {
      const ownA = intoA[order[step]!]!;
      for (let at = start[step]!; at < start[step + 1]!; at++) intoA[neighbours[at]!]! += ownA * shares[at]!;
    }
    const voltageV = new Float64Array(nodeCount);
    for (let step = order.length - 1; step >= 0; step--) {
      const node = order[step]!;
      if (!reached[node]) continue;
      let sumV = intoA[node]! / totalS[step]!;
      for (let at = start[step]!; at < start[step + 1]!; at++)
        sumV += shares[at]! * voltageV[neighbours[at]!]!;
      voltageV[node] = sumV;
    }
    return voltageV;
  };
  // Selected inverse (Takahashi, Fagan and Chin 1973): outwards from the node eliminated last, only between
  // neighbours, which is all that is ever asked for because eliminating a node joined its neighbours.
  const ownOhm = (): Float64Array => {
    const own = new Float64Array(nodeCount);
    for (let node = 0; node < nodeCount; node++) own[node] = heldBy[node]! >= 0 ? 0 : Infinity;
    const stepOf = new Int32Array(nodeCount);
    order.forEach((node, step) => (stepOf[node] = step));
    const between = new Float64Array(neighbours.length);
    const mutual = (a: number, b: number): number => {
      if (a === b) return own[a]!;
      const [first, second] = stepOf[a]! < stepOf[b]! ? [a, b] : [b, a];
      const from = start[stepOf[first]!]!;
      return between[neighbours.indexOf(second, from)]!;
    };
    for (let step = order.length - 1; step >= 0; step--) {
      const node = order[step]!;
      if (!reached[node]) continue;
      let ohm = 1 / totalS[step]!;
      for (let at = start[step]!; at < start[step + 1]!; at++) {
        let sumOhm = 0;
        for (let other = start[step]!; other < start[step + 1]!; other++) {
          sumOhm += shares[other]! * mutual(neighbours[other]!, neighbours[at]!);
        }
        between[at] = sumOhm;
        ohm += shares[at]! * sumOhm;
      }
      own[node] = ohm;
    }
    return own;
  };
  return { reached, voltages, ownOhm };
}
