import { DegreeQueue } from "./degree-queue.ts";
import { ResistorList } from "./resistor-list.ts";

export interface Conductances {
  nodeCount: number;
  /** Per conductance its two nodes; equal nodes and 0 S are passed over. */
  from: readonly number[];
  to: readonly number[];
  conductanceS: readonly number[];
  /** Per node: 0 or more where a supply holds it, -1 where it floats freely. */
  heldBy: readonly number[];
}

export interface Elimination {
  /** Per node: 1 where it is held, or where a held node reaches it. */
  reached: Uint8Array;
  /**
   * Node voltages for currents put into the nodes (a held neighbour counts as conductance x its voltage).
   * Held nodes and islands that no supply reaches read 0. `intoA` is used up.
   */
  voltages(intoA: Float64Array): Float64Array;
  /** Per node, the resistance between it and all held nodes together: 0 at a held node, Infinity where none reaches. */
  ownOhm(): Float64Array;
}

/** What one elimination after another is worked out in; nothing of one is read by the next. */
const room = { resistors: new ResistorList(), queue: new DegreeQueue(), toHeldS: new Float64Array(0) };

/** The room, made ready for a network: its resistors laid, its free nodes in the queue, what leads to held ones added up. */
function madeReady({ nodeCount, from, to, conductanceS, heldBy }: Conductances): typeof room {
  if (room.toHeldS.length < nodeCount) room.toHeldS = new Float64Array(2 * nodeCount);
  const { resistors, queue, toHeldS } = room;
  resistors.reset(nodeCount);
  queue.reset(nodeCount);
  toHeldS.fill(0, 0, nodeCount);
  for (let index = 0; index < from.length; index++) {
    const a = from[index]!;
    const b = to[index]!;
    const valueS = conductanceS[index]!;
    if (a === b || valueS === 0) continue;
    if (heldBy[a]! < 0 && heldBy[b]! < 0) resistors.join(a, b, valueS);
    else if (heldBy[a]! < 0) toHeldS[a]! += valueS;
    else if (heldBy[b]! < 0) toHeldS[b]! += valueS;
  }
  const { degree } = resistors;
  for (let node = nodeCount - 1; node >= 0; node--) if (heldBy[node]! < 0) queue.put(node, degree[node]!);
  return room;
}

/** In the order in which the free nodes were taken out: what each gave to its neighbours of then. */
interface Steps {
  stepCount: number;
  order: readonly number[];
  totalS: readonly number[];
  /** Where the neighbours of each step begin; one more than there are steps. */
  start: readonly number[];
  neighbours: readonly number[];
  shares: readonly number[];
}

/** Takes the free nodes out one by one, the one with the fewest neighbours first. The room is used up. */
function takenOut({ resistors, queue, toHeldS }: typeof room, nodeCount: number, leadCount: number): Steps {
  const { around, aroundS, degree } = resistors;
  // Plain arrays of about the length they will have: a typed one of this size takes twice as long to make.
  const order = new Array<number>(nodeCount);
  const totalS = new Array<number>(nodeCount);
  const start = new Array<number>(nodeCount + 1);
  const neighbours = new Array<number>(leadCount);
  const shares = new Array<number>(leadCount);
  let stepCount = 0;
  let end = 0;
  for (let node = queue.take(); node >= 0; node = queue.take()) {
    const count = resistors.remove(node);
    const ownS = toHeldS[node]!;
    let sumS = ownS;
    for (let i = 0; i < count; i++) sumS += aroundS[i]!;
    order[stepCount] = node;
    totalS[stepCount] = sumS;
    start[stepCount] = end;
    stepCount++;
    for (let i = 0; i < count; i++) {
      const share = aroundS[i]! / sumS;
      neighbours[end] = around[i]!;
      shares[end] = share;
      end++;
      toHeldS[around[i]!]! += share * ownS;
    }
    resistors.mesh(count, sumS);
    for (let i = 0; i < count; i++) queue.put(around[i]!, degree[around[i]!]!);
  }
  start[stepCount] = end;
  return { stepCount, order, totalS, start, neighbours, shares };
}

/**
 * Eliminates nodes by the star-mesh transform (Rosen 1924; it is Gaussian elimination of the nodal equations):
 * a node with neighbours of conductance g_i and G = sum g_i is replaced by g_i g_j / G between each pair.
 * Nothing is ever subtracted, so rounding stays small beside 1 milliohm resistors. The node with the fewest
 * neighbours goes first: trees and rings take linear time.
 */
export function eliminate(conductances: Conductances): Elimination {
  const { nodeCount, heldBy, from } = conductances;
  const ready = madeReady(conductances);
  const { toHeldS } = ready;
  const { stepCount, order, totalS, start, neighbours, shares } = takenOut(ready, nodeCount, from.length);
  const reached = new Uint8Array(nodeCount);
  for (let node = 0; node < nodeCount; node++) if (heldBy[node]! >= 0) reached[node] = 1;
  for (let step = stepCount - 1; step >= 0; step--) {
    // The first neighbour was eliminated later, so its answer is known; all of them share one island.
    const node = order[step]!;
    const hasNeighbour = start[step + 1]! > start[step]!;
    reached[node] = toHeldS[node]! > 0 || (hasNeighbour && reached[neighbours[start[step]!]!]) ? 1 : 0;
  }
  const voltages = (intoA: Float64Array): Float64Array => {
    for (let step = 0; step < stepCount; step++) {
      const ownA = intoA[order[step]!]!;
      for (let at = start[step]!; at < start[step + 1]!; at++) intoA[neighbours[at]!]! += ownA * shares[at]!;
    }
    const voltageV = new Float64Array(nodeCount);
    for (let step = stepCount - 1; step >= 0; step--) {
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
    for (let step = 0; step < stepCount; step++) stepOf[order[step]!] = step;
    const between = new Float64Array(start[stepCount]!);
    const mutual = (a: number, b: number): number => {
      if (a === b) return own[a]!;
      const [first, second] = stepOf[a]! < stepOf[b]! ? [a, b] : [b, a];
      const from = start[stepOf[first]!]!;
      return between[neighbours.indexOf(second, from)]!;
    };
    for (let step = stepCount - 1; step >= 0; step--) {
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
