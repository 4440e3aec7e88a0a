import {
  type CableId,
  cableId,
  contactId,
  type ContactId,
  type ConductorId,
  conductorId,
  type EntryId,
  entryOf,
  type Role,
  roleOf,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import { type Core, corePlaces, type CorePlace } from "../board/station-kinds.ts";
import { type Buses, busesOf, type InternalLink, type NodeId } from "../circuit/buses.ts";
import { usualCpcCsaMm2 } from "../trade/resistance.ts";
import type { CableSpec, Station, Wiring } from "../wiring/wiring.schema.ts";

/** One core of one cable between two nodes. */
export interface Conductor {
  cable: CableId;
  id: ConductorId;
  from: ContactId;
  to: ContactId;
  fromNode: number;
  toNode: number;
  /** The core it is, by where it lands at its `from` end. */
  core: Core;
  /** Undefined where nobody has said it. */
  csaMm2: number | undefined;
  lengthM: number | undefined;
  /** A poor joint somewhere along it; Infinity where it is broken. */
  jointOhm: number;
}

export interface CopperLink extends InternalLink {
  fromNode: number;
  toNode: number;
}

/** Everything of a wiring that current can pass through: nodes, the cores between them, the links inside accessories. */
export interface Copper {
  buses: Buses;
  nodes: NodeId[];
  nodeIndex: Map<NodeId, number>;
  stations: Map<StationId, Station>;
  cables: Map<CableId, CableSpec>;
  conductors: Conductor[];
  links: CopperLink[];
}

/**
 * The copper of a wiring as sensed. A cable whose spec lists no conductors has every core straight, core by core; a
 * conductor to a contact that its station does not have is left out.
 */
export function copperOf(
  wiring: Pick<Wiring, "stations" | "cables">,
  buses: Buses = busesOf(wiring),
): Copper {
  const nodes = [...buses.nodes.keys()];
  const nodeIndex = new Map(nodes.map((node, index) => [node, index]));
  const stations = new Map(wiring.stations.map((station) => [station.id, station]));
  const copper: Copper = {
    buses,
    nodes,
    nodeIndex,
    stations,
    cables: new Map(),
    conductors: [],
    links: buses.links.map((link) => ({
      ...link,
      fromNode: nodeIndex.get(link.from)!,
      toNode: nodeIndex.get(link.to)!,
    })),
  };
  for (const cable of wiring.cables) {
    const id = cableId(cable.from, cable.to);
    copper.cables.set(id, cable);
    const cpcCsaMm2 =
      cable.cpcCsaMm2 ?? (cable.csaMm2 === undefined ? undefined : usualCpcCsaMm2(cable.csaMm2));
    for (const [from, to] of contactPairs(cable, copper)) {
      const fromNode = nodeAt(copper, from);
      const toNode = nodeAt(copper, to);
      if (fromNode === undefined || toNode === undefined) continue;
      const core = coreAt(from, copper);
      copper.conductors.push({
        cable: id,
        id: conductorId(from, to),
        from,
        to,
        fromNode,
        toNode,
        core,
        csaMm2: core === "earth" ? cpcCsaMm2 : cable.csaMm2,
        lengthM: cable.lengthM,
        jointOhm: 0,
      });
    }
  }
  return copper;
}

/** The node of a contact; undefined where the wiring has no such contact. */
export function nodeAt(copper: Copper, contact: ContactId): number | undefined {
  const id = copper.buses.nodeOf.get(contact);
  return id === undefined ? undefined : copper.nodeIndex.get(id);
}

function coreAt(contact: ContactId, copper: Copper): Core {
  const role = roleOf(contact);
  const place = placesAt(entryOf(contact), copper).find((each) => each.role === role);
  return place?.core ?? (role === "E" ? "earth" : role === "N" ? "blue" : "brown");
}

function contactPairs(cable: CableSpec, copper: Copper): [ContactId, ContactId][] {
  if (cable.conductors) {
    return cable.conductors.map(([from, to]) => [contactId(cable.from, from), contactId(cable.to, to)]);
  }
  const far = new Map(placesAt(cable.to, copper).map(({ core, role }) => [core, role]));
  return placesAt(cable.from, copper).flatMap(({ core, role }): [ContactId, ContactId][] => {
    const farRole: Role | undefined = far.get(core);
    return farRole ? [[contactId(cable.from, role), contactId(cable.to, farRole)]] : [];
  });
}

function placesAt(entry: EntryId, copper: Copper): CorePlace[] {
  const station = copper.stations.get(stationOf(entry));
  const side = copper.buses.sideOf.get(entry);
  if (!station || !side) return [];
  return corePlaces(station.kind, side, station.settings?.switching) ?? [];
}
