import {
  contactId,
  type ContactId,
  entryId,
  type EntryId,
  entryOf,
  isFront,
  type Role,
  type RoleClass,
  roleClass,
  roleOf,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import {
  busName,
  type Core,
  type CoreRole,
  coreRoles,
  type Side,
  sides,
  type StationKind,
  stationKinds,
  type Switching,
  switchings,
  usualEntries,
} from "../board/station-kinds.ts";
import { type LinkPair, linkPairsOf } from "./link-pairs.ts";
import type { Station, Wiring } from "./wiring.schema.ts";

declare const kind: unique symbol;
/** `socket-3/L`, `fcu-1/load.L`, `bar/N`, `source/L`: all that is one piece of copper inside an accessory. */
export type NodeId = string & { readonly [kind]: "node" };

export const nodeId = (station: string, bus: string): NodeId => `${station}/${bus}` as NodeId;

/** The incoming line, neutral and earth of the consumer unit, where every way meets. */
export const sourceLine = nodeId("source", "L");
export const neutralBar = nodeId("bar", "N");
export const earthBar = nodeId("bar", "E");

/** The incoming node of a class of conductor. */
export const sourceNode = (conductor: RoleClass): NodeId =>
  conductor === "live" ? sourceLine : conductor === "neutral" ? neutralBar : earthBar;

/** Something inside a station that joins two of its nodes, always or in one position of its switch. */
export interface InternalLink {
  station: StationId;
  kind: LinkPair["kind"];
  from: NodeId;
  to: NodeId;
  /** The numbers of those nodes. */
  fromIndex: number;
  toIndex: number;
  conductor: RoleClass;
  /** The switch position that closes it; left out where it is closed in normal use. */
  closedIn?: 0 | 1;
}

/** The node of a station's bus. */
export interface BusNode {
  id: NodeId;
  /** Its place among all nodes, from 0. */
  index: number;
  /** Undefined for the source and the two bars. */
  station?: StationId;
  conductor: RoleClass;
}

/** Where a core of a cable lands in an entry. */
export interface CorePlace {
  core: Core;
  role: Role;
  contact: ContactId;
  /** Its place among all contacts, from 0. */
  contactIndex: number;
  node: NodeId;
  /** The number of that node. */
  index: number;
}

/** An entry and its core places, in core order. */
export interface BusEntry {
  station: StationId;
  side: Side;
  places: CorePlace[];
}

export interface Buses {
  nodes: Map<NodeId, BusNode>;
  /** The nodes of each station by the names of its buses, for whoever would else have to spell their ids. */
  nodesAt: Map<StationId, Map<string, BusNode>>;
  contactCount: number;
  links: InternalLink[];
  entries: Map<EntryId, BusEntry>;
  /** Switches that have two positions, in the order of their ids. */
  switches: StationId[];
}

/** The entries of a station: those it lists, or the usual ones of its kind. */
export const entriesOf = (station: Station): { letter: string; side: Side }[] =>
  station.entries ?? usualEntries[station.kind];

/** The contacts an entry has, in core order; none where a station of that kind has no such side. */
export const contactsAt = (station: Station, letter: string, side: Side): ContactId[] => {
  const roles = coreRoles(station.kind, side, station.settings?.switching);
  return (roles ?? []).map(({ role }) => contactId(entryId(station.id, letter), role));
};

/** A core place of an entry before it is laid: the bus it lands on, by name and class. */
interface Landing extends CoreRole {
  bus: string;
  conductor: RoleClass;
}

const landingsOf = (kind: StationKind, side: Side, switching: Switching): Landing[] =>
  (coreRoles(kind, side, switching) ?? []).map((place) => ({
    ...place,
    bus: busName(kind, side, place.role),
    conductor: roleClass(place.role),
  }));

const tableOf = <Key extends string, Value>(keys: readonly Key[], value: (key: Key) => Value) =>
  Object.fromEntries(keys.map((key) => [key, value(key)])) as Record<Key, Value>;

/** Where each core lands, worked out once: a board asks for it at every verdict. */
const landings = tableOf(switchings, (switching) =>
  tableOf(stationKinds, (kind) => tableOf(sides, (side) => landingsOf(kind, side, switching))),
);

/** The entries of a station that are in use, by letter; undefined where all of them count. */
export type EntriesInUse = (station: StationId) => ReadonlyMap<string, EntryId> | undefined;

/**
 * What is common inside the accessories of a wiring: its nodes, the contacts on each, and the links between
 * nodes that a device, fuse, switch or bar makes. Copper between accessories is not in it. Of the entries all are
 * laid, or those in use: what is common inside a station is the same whichever of them are.
 */
export const busesOf = (wiring: Pick<Wiring, "stations">, inUse: EntriesInUse = () => undefined): Buses => {
  const nodes = new Map<NodeId, BusNode>();
  const node = (id: NodeId, conductor: RoleClass, station?: StationId): BusNode => {
    const made: BusNode = { id, index: nodes.size, conductor };
    if (station) made.station = station;
    nodes.set(id, made);
    return made;
  };
  const incoming: Record<RoleClass, BusNode> = {
    live: node(sourceLine, "live"),
    neutral: node(neutralBar, "neutral"),
    earth: node(earthBar, "earth"),
  };
  const buses: Buses = {
    nodes,
    nodesAt: new Map(),
    contactCount: 0,
    links: [],
    entries: new Map(),
    switches: [],
  };
  for (const station of wiring.stations) {
    const { kind, id: at, settings } = station;
    const own = buses.nodesAt.get(at) ?? new Map<string, BusNode>();
    const bus = (name: string, conductor: RoleClass): BusNode => {
      const known = own.get(name);
      if (known) return known;
      const made = node(nodeId(at, name), conductor, at);
      own.set(name, made);
      return made;
    };
    buses.nodesAt.set(at, own);
    const used = inUse(at);
    const bySide = landings[settings?.switching ?? "one-way"][kind];
    for (const { letter, side } of entriesOf(station)) {
      const entry = used ? used.get(letter) : entryId(at, letter);
      if (entry === undefined) continue;
      const places = bySide[side].map(({ core, role, bus: name, conductor }): CorePlace => {
        const { id, index } = bus(name, conductor);
        return {
          core,
          role,
          contact: contactId(entry, role),
          contactIndex: buses.contactCount++,
          node: id,
          index,
        };
      });
      buses.entries.set(entry, { station: at, side, places });
    }
    for (const { kind: linkKind, from, to, conductor, closedIn } of linkPairsOf(station)) {
      const near = from === undefined ? incoming[conductor] : bus(from, conductor);
      const far = bus(to, conductor);
      const link: InternalLink = {
        station: at,
        kind: linkKind,
        from: near.id,
        to: far.id,
        fromIndex: near.index,
        toIndex: far.index,
        conductor,
      };
      if (closedIn !== undefined) link.closedIn = closedIn;
      buses.links.push(link);
    }
    if (kind === "plate-switch") buses.switches.push(at);
  }
  return buses;
};

/** The node of a contact that some entry has; undefined where none has it, or its entry was not laid. */
export const nodeOfContact = (contact: ContactId, { entries }: Buses): NodeId | undefined =>
  entries.get(entryOf(contact))?.places.find((place) => place.contact === contact)?.node;

/** The node a test face touches: the station's bus of that role, on the load side where it has two. */
export const nodeOfFront = (front: ContactId, buses: Buses): NodeId | undefined => {
  if (!isFront(front)) return nodeOfContact(front, buses);
  const own = buses.nodesAt.get(stationOf(front));
  const role = roleOf(front);
  return (own?.get(role) ?? own?.get(`load.${role}`))?.id;
};
