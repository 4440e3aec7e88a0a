import { byId, type StationId } from "../board/ids.ts";
import { isPoint } from "../board/station-kinds.ts";
import { type Buses, nodeId, type NodeId } from "../wiring/buses.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import { isCable } from "./is-cable.ts";
import type { CableModel, FusedLink, Zone } from "./model.ts";

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
export function fillZones(
  zones: readonly Zone[],
  filling: Filling,
): { pointNodes: Set<NodeId>; laid: CableModel[][] } {
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
