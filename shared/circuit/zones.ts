import { byId, type StationId } from "../board/ids.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { Buses, NodeId } from "../wiring/buses.ts";
import { overloadFactor } from "./coordination.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import { fillZones } from "./fill-zones.ts";
import type { CableModel, FusedLink, Upstream, Zone } from "./model.ts";
import { runEnds } from "./run-ends.ts";
import { shapeOf } from "./shape.ts";
import { spursOf } from "./spurs.ts";
import { type Draft, draftZones, type Fuse } from "./zone-drafts.ts";

export interface ZoneTable {
  zones: Zone[];
  fusedLinks: FusedLink[];
  zoneOfNode: (node: NodeId) => Zone | undefined;
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
  const drafts = draftZones({ sets, fuses, cables, buses, stations });

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
  const { pointNodes, laid } = fillZones(zones, {
    buses,
    stations,
    cables,
    used,
    fusedLinks,
    zoneOfNode,
    zoneAt,
  });
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

const firstSource = (draft: Draft): string =>
  draft.sources.reduce((least, { station }) => (least === "" || station < least ? station : least), "");

function strongest(sources: readonly Upstream[]): Upstream {
  const [first, ...rest] = sources as [Upstream, ...Upstream[]];
  if (sources.some(({ ratingA }) => ratingA === undefined))
    return sources.find(({ ratingA }) => ratingA === undefined) ?? first;
  return rest.reduce((best, source) => ((source.ratingA ?? 0) > (best.ratingA ?? 0) ? source : best), first);
}
