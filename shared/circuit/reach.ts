import { byId, type StationId } from "../board/ids.ts";
import type { Buses, NodeId } from "../wiring/buses.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { ConductorModel } from "./conductor-model.ts";
import type { Reach } from "./model.ts";

/** Above this many switches that work on each other, positions are not enumerated one by one. */
const mostSwitchesTogether = 10;

export interface ReachTable {
  reachOf: (node: NodeId) => Reach;
  /** Equal for nodes that are one when every switch is closed in both positions. */
  groupOf: (node: NodeId) => number;
  /** Positions in which a node is reached, one bit each, with the switches that count; for lamps. */
  positionsOf: (
    node: NodeId,
  ) => { switches: readonly StationId[]; isReachedIn: readonly boolean[] } | undefined;
}

interface SwitchLink {
  station: StationId;
  a: number;
  b: number;
  closedIn: 0 | 1;
}

/**
 * Which ways reach each node by conductors of its own class, with switches in every position. Fuses and the
 * contacts of isolators, controls and connection units are closed; devices and the two bars are open, so that
 * each way is told apart. Switches are enumerated cluster by cluster: two lamps with a switch each are two
 * clusters of two positions, not one of four, unless a switch may join two ways: then all that meets is one
 * cluster. In a cluster of more than ten switches a node that can be reached at all counts as reached in some
 * positions and not in others.
 */
export const reachTable = (buses: Buses, conductors: readonly ConductorModel[]): ReachTable => {
  const { nodes } = buses;
  const sets = new DisjointSets(nodes.size);
  for (const conductor of conductors)
    if (conductor.class !== "crossed") sets.join(conductor.fromIndex, conductor.toIndex);
  for (const link of buses.links)
    if (link.kind === "fuse" || link.kind === "contact") sets.join(link.fromIndex, link.toIndex);

  const ways = new Map<number, StationId[]>();
  for (const link of buses.links) {
    if (link.kind !== "device" && link.kind !== "bar") continue;
    const root = sets.find(link.toIndex);
    const known = ways.get(root);
    if (known) known.push(link.station);
    else ways.set(root, [link.station]);
  }
  for (const list of ways.values()) list.sort(byId);

  const links: SwitchLink[] = buses.links.flatMap((link) => {
    if (link.kind !== "switch" || link.closedIn === undefined) return [];
    const [a, b] = [sets.find(link.fromIndex), sets.find(link.toIndex)];
    return a === b ? [] : [{ station: link.station, a, b, closedIn: link.closedIn }];
  });
  const clusters = links.length > 0 ? enumerate(links, ways, nodes.size) : new Map<number, Switched>();

  const nothing: Reach = { always: [], sometimes: [], isPermanent: false };
  const reaches = new Map<number, Reach>();
  for (const [root, list] of ways) reaches.set(root, { always: list, sometimes: list, isPermanent: true });
  for (const [root, { reach }] of clusters) reaches.set(root, reach);
  const closed = new DisjointSets(nodes.size);
  for (let index = 0; index < nodes.size; index++) closed.join(index, sets.find(index));
  for (const { a, b } of links) closed.join(a, b);
  return {
    groupOf: (node) => closed.find(nodes.get(node)?.index ?? 0),
    reachOf: (node) => {
      const at = nodes.get(node);
      return (at && reaches.get(sets.find(at.index))) ?? nothing;
    },
    positionsOf: (node) => {
      const at = nodes.get(node);
      const switched = at && clusters.get(sets.find(at.index));
      return switched && { switches: switched.switches, isReachedIn: switched.isReachedIn };
    },
  };
};

interface Switched {
  reach: Reach;
  switches: StationId[];
  isReachedIn: boolean[];
}

/** Switched nodes fall into clusters that share a switch or touch; each is worked through position by position. */
function enumerate(
  links: readonly SwitchLink[],
  ways: ReadonlyMap<number, StationId[]>,
  count: number,
): Map<number, Switched> {
  const clusterOf = new DisjointSets(count);
  const contested = whereWaysMeet(links, ways, count);
  // What is joined to one way for good keeps the lamps behind it apart, whatever their switches do.
  const loose = (node: number): boolean => !ways.has(node) || contested(node);
  const firstOf = new Map<StationId, number>();
  for (const { station, a, b } of links)
    for (const node of [a, b]) {
      if (!loose(node)) continue;
      clusterOf.join(node, firstOf.get(station) ?? node);
      if (!firstOf.has(station)) firstOf.set(station, node);
    }
  const groups = new Map<number, SwitchLink[]>();
  for (const link of links) {
    const node = loose(link.a) ? link.a : loose(link.b) ? link.b : undefined;
    if (node === undefined) continue;
    const root = clusterOf.find(node);
    const known = groups.get(root);
    if (known) known.push(link);
    else groups.set(root, [link]);
  }
  const result = new Map<number, Switched>();
  for (const group of groups.values()) workThrough(group, ways, loose, result);
  return result;
}

/** Whether a node is one with the nodes of two ways when every switch is closed in both positions. */
function whereWaysMeet(
  links: readonly SwitchLink[],
  ways: ReadonlyMap<number, StationId[]>,
  count: number,
): (node: number) => boolean {
  const closed = new DisjointSets(count);
  for (const { a, b } of links) closed.join(a, b);
  const heads = new Map<number, number>();
  for (const node of ways.keys()) {
    const root = closed.find(node);
    heads.set(root, (heads.get(root) ?? 0) + 1);
  }
  return (node) => (heads.get(closed.find(node)) ?? 0) > 1;
}

function workThrough(
  links: readonly SwitchLink[],
  ways: ReadonlyMap<number, StationId[]>,
  loose: (node: number) => boolean,
  result: Map<number, Switched>,
): void {
  const switches = [...new Set(links.map(({ station }) => station))].sort(byId);
  const bits = new Map(switches.map((station, bit) => [station, bit]));
  const nodes = [...new Set(links.flatMap(({ a, b }) => [a, b]))];
  const local = new Map(nodes.map((node, index) => [node, index]));
  const isFew = switches.length <= mostSwitchesTogether;
  const positions = isFew ? 2 ** switches.length : 1;
  const reached = nodes.map(() => [] as StationId[][]);
  for (let position = 0; position < positions; position++) {
    const sets = new DisjointSets(nodes.length);
    for (const { station, a, b, closedIn } of links) {
      const isAt = (position >> (bits.get(station) ?? 0)) & 1;
      if (!isFew || isAt === closedIn) sets.join(local.get(a) ?? 0, local.get(b) ?? 0);
    }
    const waysOf = new Map<number, Set<StationId>>();
    nodes.forEach((node, index) => {
      const root = sets.find(index);
      const known = waysOf.get(root) ?? new Set();
      for (const way of ways.get(node) ?? []) known.add(way);
      waysOf.set(root, known);
    });
    nodes.forEach((_, index) => reached[index]?.push([...(waysOf.get(sets.find(index)) ?? [])]));
  }
  nodes.forEach((node, index) => {
    if (!loose(node)) return;
    const own = ways.get(node) ?? [];
    const lists = reached[index] ?? [];
    const sometimes = [...new Set(lists.flat())].sort(byId);
    const always = isFew ? sometimes.filter((way) => lists.every((list) => list.includes(way))) : own;
    const isReachedIn = lists.map((list) => list.length > 0);
    result.set(node, {
      reach: { always, sometimes, isPermanent: isFew ? isReachedIn.every(Boolean) : own.length > 0 },
      switches,
      isReachedIn: isFew ? isReachedIn : [],
    });
  });
}
