import type { RoleClass, StationId } from "../board/ids.ts";
import { type NodeId, sourceNode } from "../wiring/buses.ts";
import type { CircuitModel } from "./model.ts";
import { oncePerModel } from "./once-per-model.ts";

/**
 * The stations whose links, opened together, cut a node off from the supply; nearest to the node first. Undefined where
 * the supply does not reach it.
 */
export type Separators = (node: NodeId) => StationId[] | undefined;

/**
 * For line or neutral: which stations cut a node off. All links of a station (its fuse, contacts or switch positions)
 * are one vertex between copper; those looked for are the articulation points on the way to the supply, found by one
 * depth-first walk (Hopcroft and Tarjan 1973), linear in conductors.
 */
export const separatorsOf = (model: CircuitModel, conductor: "live" | "neutral"): Separators =>
  (conductor === "live" ? ofLine : ofNeutral)(model);

const ofLine = oncePerModel((model): Separators => walk(graphOf(model, "live")));
const ofNeutral = oncePerModel((model): Separators => walk(graphOf(model, "neutral")));

interface Graph {
  start: number;
  /** By vertex; the first are the nodes, by their numbers. */
  neighbours: number[][];
  /** By vertex, the station whose links it stands for. */
  hubs: (StationId | undefined)[];
  indexOf: (node: NodeId) => number | undefined;
}

function graphOf({ buses, conductors }: CircuitModel, conductor: RoleClass): Graph {
  const neighbours: number[][] = Array.from(buses.nodes, () => []);
  const hubs: (StationId | undefined)[] = neighbours.map(() => undefined);
  const join = (a: number, b: number): void => {
    neighbours[a]?.push(b);
    neighbours[b]?.push(a);
  };
  for (const { class: own, fromIndex, toIndex } of conductors)
    if (own === conductor) join(fromIndex, toIndex);
  const hubOf = new Map<StationId, number>();
  for (const { conductor: own, station, fromIndex, toIndex, kind } of buses.links) {
    if (own !== conductor) continue;
    if (kind === "device" || kind === "bar") {
      join(fromIndex, toIndex);
      continue;
    }
    let hub = hubOf.get(station);
    if (hub === undefined) {
      hub = neighbours.push([]) - 1;
      hubs.push(station);
      hubOf.set(station, hub);
    }
    join(fromIndex, hub);
    join(hub, toIndex);
  }
  const indexOf = (node: NodeId): number | undefined => buses.nodes.get(node)?.index;
  return { start: indexOf(sourceNode(conductor)) ?? 0, neighbours, hubs, indexOf };
}

function walk({ start, neighbours, hubs, indexOf }: Graph): Separators {
  const order = new Int32Array(neighbours.length);
  const low = new Int32Array(neighbours.length);
  const parent = new Int32Array(neighbours.length).fill(-1);
  const cursor = new Int32Array(neighbours.length);
  const visited: number[] = [start];
  order[start] = low[start] = 1;
  for (let at = start; at >= 0;) {
    const next = neighbours[at]?.[cursor[at] ?? 0];
    if (next === undefined) {
      const before = parent[at] ?? -1;
      if (before >= 0) low[before] = Math.min(low[before] ?? 0, low[at] ?? 0);
      at = before;
      continue;
    }
    cursor[at] = (cursor[at] ?? 0) + 1;
    if (order[next] === 0) {
      parent[next] = at;
      order[next] = low[next] = visited.push(next);
      at = next;
    } else if (next !== parent[at]) low[at] = Math.min(low[at] ?? 0, order[next] ?? 0);
  }
  // Outwards: each vertex hangs on the last station before it that it cannot be reached without.
  const nearest = new Int32Array(neighbours.length).fill(-1);
  for (const at of visited) {
    const before = parent[at] ?? -1;
    if (before < 0) continue;
    const isCut = hubs[before] !== undefined && (low[at] ?? 0) >= (order[before] ?? 0);
    nearest[at] = isCut ? before : (nearest[before] ?? -1);
  }
  return (node) => {
    let at = indexOf(node) ?? -1;
    if (at < 0 || order[at] === 0) return undefined;
    const stations: StationId[] = [];
    for (at = nearest[at] ?? -1; at >= 0; at = nearest[at] ?? -1) {
      const station = hubs[at];
      if (station !== undefined) stations.push(station);
    }
    return stations;
  };
}
