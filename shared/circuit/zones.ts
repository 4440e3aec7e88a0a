import { byId, type RoleClass, roleClasses, type StationId } from "../board/ids.ts";
import { isPoint, type Side } from "../board/station-kinds.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import { type Buses, nodeId, type NodeId } from "../wiring/buses.ts";
import { overloadFactor } from "./coordination.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import { isCable } from "./is-cable.ts";
import type { CableModel, FusedLink, Upstream, Zone } from "./model.ts";
import { type RunEnds, shapeOf } from "./shape.ts";
import { spursOf } from "./spurs.ts";

export interface ZoneTable {
  zones: Zone[];
  fusedLinks: FusedLink[];
  zoneOfNode: (node: NodeId) => Zone | undefined;
}

interface Draft {
  root: number;
  sources: Upstream[];
  sourceNodes: number[];
  ways: Set<StationId>;
  level: number;
}

interface Fuse {
  station: StationId;
  supply: number;
  load: number;
}

/**
 * The parts of a wiring between one fuse or device and the next. Live nodes joined by line conductors, closed
 * contacts or switches are one part; a part is alive when a way or a fuse of a live part feeds it. A dead part
 * that hangs on a live one by a cable with two or more conductors, its line missing or crossed, is counted to
 * it, so that one open core does not read as another shape. Leads within one station are left out: a bridged
 * fuse is a fault of that lead alone.
 */
export const zonesOf = (
  buses: Buses,
  stations: ReadonlyMap<StationId, Station>,
  cables: readonly CableModel[],
  used: ReadonlySet<StationId>,
): ZoneTable => {
  const sets = new DisjointSets(buses.nodes.size);
  for (const cable of cables) {
    if (cable.fromStation === cable.toStation) continue;
    for (const conductor of cable.conductors)
      if (conductor.class === "live") sets.join(conductor.fromIndex, conductor.toIndex);
  }
  for (const link of buses.links)
    if (link.conductor === "live" && (link.kind === "contact" || link.kind === "switch"))
      sets.join(link.fromIndex, link.toIndex);

  const fuses: Fuse[] = buses.links
    .filter((link) => link.kind === "fuse")
    .map((link) => ({ station: link.station, supply: link.fromIndex, load: link.toIndex }))
    .sort((a, b) => byId(a.station, b.station));
  const drafts = new Map<number, Draft>();
  const draftAt = (node: number): Draft | undefined => drafts.get(sets.find(node));
  const ways = buses.links
    .filter((link) => link.kind === "device")
    .sort((a, b) => byId(a.station, b.station));
  for (const { station, toIndex } of ways) {
    const draft = draftAt(toIndex) ?? emptyDraft(sets.find(toIndex), 0);
    draft.sources.push(upstreamOf(stations.get(station), "device"));
    draft.sourceNodes.push(toIndex);
    draft.ways.add(station);
    drafts.set(draft.root, draft);
  }
  spread({ drafts, sets, fuses, cables, buses, stations });

  const ordered = [...drafts.values()].sort(
    (a, b) => a.level - b.level || byId(firstSource(a), firstSource(b)) || a.root - b.root,
  );
  const zoneByRoot = new Map<number, Zone>();
  const zones = ordered.map((draft, index): Zone => {
    const sources = draft.sources.sort((a, b) => byId(a.station, b.station));
    const zone: Zone = {
      index,
      sources,
      upstream: strongest(sources),
      isFused: draft.level > 0,
      ways: [...draft.ways].sort(byId),
      stations: [],
      points: [],
      cables: [],
      shape: { rings: [], loops: [], branches: [] },
      spurs: { spurs: [], heavy: [], legs: [], lacking: [] },
    };
    zoneByRoot.set(draft.root, zone);
    return zone;
  });
  const zoneAt = (index: number): Zone | undefined => zoneByRoot.get(sets.find(index));
  const zoneOfNode = (node: NodeId): Zone | undefined => {
    const known = buses.nodes.get(node);
    return known && zoneAt(known.index);
  };
  const fusedLinks = fuses.flatMap(({ station, supply, load }): FusedLink[] => {
    const [a, b] = [zoneByRoot.get(sets.find(supply)), zoneByRoot.get(sets.find(load))];
    if (!a || !b || a === b) return [];
    const isReversed = a.sources.some((source) => source.station === station);
    return [
      isReversed
        ? { fcu: station, from: b, to: a, isReversed }
        : { fcu: station, from: a, to: b, isReversed },
    ];
  });
  const { pointNodes, laid } = fill(zones, { buses, stations, cables, used, fusedLinks, zoneOfNode, zoneAt });
  const nodes = [...buses.nodes.keys()];
  ordered.forEach((draft, index) => {
    const zone = zones[index];
    if (!zone) return;
    const heads = new Set(draft.sourceNodes.flatMap((node) => nodes[node] ?? []));
    const ends = runEnds(zone, laid[index] ?? [], stations, zoneOfNode);
    zone.shape = shapeOf(zone, heads, pointNodes, ends);
    if (zone.isFused) return;
    const factor = overloadFactor({ stations }, zone.upstream);
    zone.spurs = spursOf(zone.shape, { deviceA: zone.upstream.ratingA, factor });
    for (const spur of zone.spurs.spurs)
      spur.isFused = spur.points.length === 1 && spur.points.every((id) => stations.get(id)?.kind === "fcu");
  });
  return { zones, fusedLinks, zoneOfNode };
};

const emptyDraft = (root: number, level: number): Draft => ({
  root,
  sources: [],
  sourceNodes: [],
  ways: new Set(),
  level,
});

const firstSource = (draft: Draft): string =>
  draft.sources.reduce((least, { station }) => (least === "" || station < least ? station : least), "");

const upstreamOf = (station: Station | undefined, kind: Upstream["kind"]): Upstream => {
  const ratingA = kind === "device" ? station?.settings?.deviceRatingA : station?.settings?.fuseRatingA;
  return {
    station: station?.id ?? ("" as StationId),
    kind,
    ...(ratingA === undefined ? {} : { ratingA }),
  };
};

function strongest(sources: readonly Upstream[]): Upstream {
  const [first, ...rest] = sources as [Upstream, ...Upstream[]];
  if (sources.some(({ ratingA }) => ratingA === undefined))
    return sources.find(({ ratingA }) => ratingA === undefined) ?? first;
  return rest.reduce((best, source) => ((source.ratingA ?? 0) > (best.ratingA ?? 0) ? source : best), first);
}

/** Goes outwards from the ways: over fuses first, then over cables whose line is missing, until nothing is added. */
function spread(spreading: Spreading): void {
  for (;;) {
    passFuses(spreading);
    if (!adopt(spreading)) return;
  }
}

interface Spreading {
  drafts: Map<number, Draft>;
  sets: DisjointSets;
  fuses: readonly Fuse[];
  cables: readonly CableModel[];
  buses: Buses;
  stations: ReadonlyMap<StationId, Station>;
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

interface Filling {
  buses: Buses;
  stations: ReadonlyMap<StationId, Station>;
  cables: readonly CableModel[];
  used: ReadonlySet<StationId>;
  fusedLinks: readonly FusedLink[];
  zoneOfNode: (node: NodeId) => Zone | undefined;
  /** The same by the number of the node. */
  zoneAt: (index: number) => Zone | undefined;
}

/**
 * Gives every zone its stations, points and cables, and every cable its zone and upstream device. Returns the line
 * buses at which current is taken, of a connection unit the side it is fed at; and by zone all that is laid in it, leads
 * that are no cables with them.
 */
function fill(zones: readonly Zone[], filling: Filling): { pointNodes: Set<NodeId>; laid: CableModel[][] } {
  const { buses, stations, cables, used, fusedLinks, zoneOfNode, zoneAt } = filling;
  const stationSets = zones.map(() => new Set<StationId>());
  const pointSets = zones.map(() => new Set<StationId>());
  const pointNodes = new Set<NodeId>();
  const laid = zones.map((): CableModel[] => []);
  const fedFrom = new Map(fusedLinks.map((link) => [link.fcu, link.from]));
  for (const { id: node, index, station, conductor } of buses.nodes.values()) {
    const zone = conductor === "live" && station !== undefined ? zoneAt(index) : undefined;
    const known = station === undefined ? undefined : stations.get(station);
    if (!zone || !known || !(used.has(known.id) || known.kind === "way")) continue;
    stationSets[zone.index]?.add(known.id);
    if (!isPoint(known.kind)) continue;
    if (known.kind === "fcu" && fedFrom.has(known.id) && fedFrom.get(known.id) !== zone) continue;
    pointSets[zone.index]?.add(known.id);
    const isFarSide =
      known.kind === "fcu" &&
      node === nodeId(known.id, "load.L") &&
      zoneOfNode(nodeId(known.id, "supply.L")) === zone;
    if (!isFarSide) pointNodes.add(node);
  }
  for (const zone of zones) {
    zone.stations = [...(stationSets[zone.index] ?? [])].sort(byId);
    zone.points = [...(pointSets[zone.index] ?? [])].sort(byId);
  }
  for (const cable of cables) {
    const zone = zoneOfCable(cable, filling);
    if (!zone) continue;
    cable.zone = zone;
    cable.upstream = zone.upstream;
    cable.circuits = zone.ways;
    if (cable.fromStation === cable.toStation) continue;
    laid[zone.index]?.push(cable);
    if (isCable(cable)) zone.cables.push(cable);
  }
  return { pointNodes, laid };
}

/** A cable is where its line is; without a line, where both its ends are. */
function zoneOfCable(
  cable: CableModel,
  { zoneOfNode, zoneAt }: Pick<Filling, "zoneOfNode" | "zoneAt">,
): Zone | undefined {
  const line = cable.conductors.find((conductor) => conductor.class === "live");
  if (line) return zoneAt(line.fromIndex);
  const zone = zoneOfNode(cable.fromLine);
  return zone === zoneOfNode(cable.toLine) ? zone : undefined;
}

/**
 * Where the runs of a zone's shape end: at the line bus of each station. Switched and strap cables are no part of
 * the shape; the two sides of an isolator or control are one, those of a connection unit are not.
 */
function runEnds(
  zone: Zone,
  cables: readonly CableModel[],
  stations: ReadonlyMap<StationId, Station>,
  zoneOfNode: (node: NodeId) => Zone | undefined,
): RunEnds[] {
  return cables.flatMap((cable): RunEnds[] => {
    const a = shapeNode(cable.fromLine, cable.fromSide, stations.get(cable.fromStation));
    const b = shapeNode(cable.toLine, cable.toSide, stations.get(cable.toStation));
    if (!a || !b || a === b || zoneOfNode(a) !== zone || zoneOfNode(b) !== zone) return [];
    const classes = classesOf(cable);
    // A lone crossed lead is a fault of its own and no way for a circuit to go.
    if (classes.size === 0 && cable.conductors.length < 2) return [];
    return [{ cable, a, b, classes }];
  });
}

/** Every set of classes that a cable can carry straight through; by a bit a class, so that none is made twice. */
const classSets: readonly ReadonlySet<RoleClass>[] = Array.from(
  { length: 2 ** roleClasses.length },
  (_, bits) => new Set(roleClasses.filter((_, bit) => bits & (1 << bit))),
);

function classesOf({ conductors }: CableModel): ReadonlySet<RoleClass> {
  let bits = 0;
  for (const { class: conductor } of conductors)
    if (conductor !== "crossed") bits |= 1 << roleClasses.indexOf(conductor);
  return classSets[bits]!;
}

function shapeNode(line: NodeId, side: Side, station: Station | undefined): NodeId | undefined {
  if (!station || (side !== "feed" && side !== "supply" && side !== "load" && side !== "switch"))
    return undefined;
  if (station.kind === "isolator" || station.kind === "cooker-control") return nodeId(station.id, "supply.L");
  // The straps of a two-way switch are switched already.
  return line.endsWith("/strap1") || line.endsWith("/strap2") ? undefined : line;
}
