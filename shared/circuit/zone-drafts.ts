import { byId, type StationId } from "../board/ids.ts";
import type { Buses } from "../wiring/buses.ts";
import type { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { CableModel, Upstream } from "./model.ts";

/** A part of a wiring on its way to a zone: what feeds it, and how many fuses lie between it and its way. */
export interface Draft {
  root: number;
  sources: Upstream[];
  sourceNodes: number[];
  ways: Set<StationId>;
  level: number;
}

/** The two sides of a fuse in a station, by the numbers of their nodes. */
export interface Fuse {
  station: StationId;
  supply: number;
  load: number;
}

interface Spreading {
  drafts: Map<number, Draft>;
  sets: DisjointSets;
  fuses: readonly Fuse[];
  cables: readonly CableModel[];
  buses: Buses;
  stations: ReadonlyMap<StationId, Station>;
}

/** The parts that ways feed, and outwards from them over fuses and over cables whose line is missing, by their roots. */
export function draftZones(parts: Omit<Spreading, "drafts">): Map<number, Draft> {
  const { sets, buses, stations } = parts;
  const drafts = new Map<number, Draft>();
  const ways = buses.links
    .filter((link) => link.kind === "device")
    .sort((a, b) => byId(a.station, b.station));
  for (const { station, toIndex } of ways) {
    const draft = drafts.get(sets.find(toIndex)) ?? emptyDraft(sets.find(toIndex), 0);
    draft.sources.push(upstreamOf(stations.get(station), "device"));
    draft.sourceNodes.push(toIndex);
    draft.ways.add(station);
    drafts.set(draft.root, draft);
  }
  spread({ ...parts, drafts });
  return drafts;
}

const emptyDraft = (root: number, level: number): Draft => ({
  root,
  sources: [],
  sourceNodes: [],
  ways: new Set(),
  level,
});

const upstreamOf = (station: Station | undefined, kind: Upstream["kind"]): Upstream => {
  const ratingA = kind === "device" ? station?.settings?.deviceRatingA : station?.settings?.fuseRatingA;
  return {
    station: station?.id ?? ("" as StationId),
    kind,
    ...(ratingA === undefined ? {} : { ratingA }),
  };
};

/** Goes outwards from the ways: over fuses first, then over cables whose line is missing, until nothing is added. */
function spread(spreading: Spreading): void {
  for (;;) {
    passFuses(spreading);
    if (!adopt(spreading)) return;
  }
}

function passFuses({ drafts, sets, fuses, stations }: Spreading): void {
  const done = new Set<StationId>();
  for (const draft of drafts.values())
    for (const { station, kind } of draft.sources) if (kind === "fuse") done.add(station);
  for (let level = 0; ; level++) {
    const reachable = fuses.filter(({ station, supply, load }) => {
      if (done.has(station)) return false;
      return [supply, load].some((node) => drafts.get(sets.find(node))?.level === level);
    });
    if (reachable.length === 0 && ![...drafts.values()].some((draft) => draft.level > level)) return;
    for (const { station, supply, load } of reachable) {
      const [a, b] = [sets.find(supply), sets.find(load)];
      if (a === b) continue;
      done.add(station);
      const [draftA, draftB] = [drafts.get(a), drafts.get(b)];
      // Fed at the load side only, or nearer to the way there: the fuse is passed backwards.
      const backwards = !draftA || (draftB !== undefined && draftB.level < draftA.level);
      const [from, to, toNode] = backwards ? [draftB, draftA, supply] : [draftA, draftB, load];
      if (!from || to?.level === 0) continue;
      const fed = to ?? emptyDraft(sets.find(toNode), level + 1);
      drafts.set(fed.root, fed);
      fed.sources.push(upstreamOf(stations.get(station), "fuse"));
      fed.sourceNodes.push(toNode);
      for (const way of from.ways) fed.ways.add(way);
    }
  }
}

/** Counts dead parts to the one live part they hang on; true where any was added. */
function adopt({ drafts, sets, cables, buses }: Spreading): boolean {
  const dead = new Map<number, Set<number>>();
  const clusters = new Map<number, number>();
  const clusterOf = (node: number): number => {
    let at = node;
    for (let up = clusters.get(at); up !== undefined && up !== at; up = clusters.get(at)) at = up;
    return at;
  };
  for (const cable of cables) {
    if (cable.conductors.length < 2 || cable.fromStation === cable.toStation) continue;
    const [a, b] = [buses.nodes.get(cable.fromLine), buses.nodes.get(cable.toLine)];
    if (!a || !b) continue;
    const [rootA, rootB] = [sets.find(a.index), sets.find(b.index)];
    const [liveA, liveB] = [drafts.has(rootA), drafts.has(rootB)];
    if (liveA && liveB) continue;
    for (const root of [rootA, rootB]) if (!drafts.has(root) && !clusters.has(root)) clusters.set(root, root);
    if (!liveA && !liveB) {
      const [x, y] = [clusterOf(rootA), clusterOf(rootB)];
      if (x === y) continue;
      clusters.set(y, x);
      dead.set(x, new Set([...(dead.get(x) ?? []), ...(dead.get(y) ?? [])]));
      continue;
    }
    const cluster = clusterOf(liveA ? rootB : rootA);
    const hosts = dead.get(cluster) ?? new Set<number>();
    hosts.add(liveA ? rootA : rootB);
    dead.set(cluster, hosts);
  }
  const taken = [...clusters.keys()].flatMap((root) => {
    const hosts = dead.get(clusterOf(root));
    const [host] = hosts ?? [];
    return hosts?.size === 1 && host !== undefined ? [{ root, host }] : [];
  });
  for (const { root, host } of taken) {
    const draft = drafts.get(host) ?? drafts.get(sets.find(host));
    sets.join(root, host);
    if (!draft) continue;
    drafts.delete(draft.root);
    draft.root = sets.find(host);
    drafts.set(draft.root, draft);
  }
  return taken.length > 0;
}
