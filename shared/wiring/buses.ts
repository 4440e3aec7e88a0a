import {
  contactId,
  type ContactId,
  entryId,
  type EntryId,
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
  coreRoles,
  type Side,
  type StationKind,
  usualEntries,
} from "../board/station-kinds.ts";
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
  kind: "device" | "bar" | "fuse" | "contact" | "switch";
  from: NodeId;
  to: NodeId;
  /** The numbers of those nodes. */
  fromIndex: number;
  toIndex: number;
  conductor: RoleClass;
  /** The switch position that closes it; left out where it is closed in normal use. */
  closedIn?: 0 | 1;
}

/** The node of a station's bus and the contacts that lie on it. */
export interface BusNode {
  id: NodeId;
  /** Its place among all nodes, from 0. */
  index: number;
  /** Undefined for the source and the two bars. */
  station?: StationId;
  conductor: RoleClass;
  contacts: ContactId[];
}

/** Where a core of a cable lands in an entry. */
export interface CorePlace {
  core: Core;
  role: Role;
  contact: ContactId;
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
  nodeOf: Map<ContactId, NodeId>;
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

type LinkPair = Omit<InternalLink, "station" | "fromIndex" | "toIndex">;

const linkPairs: Partial<Record<StationKind, (station: Station) => LinkPair[]>> = {
  way: ({ id }) => [
    { kind: "device", from: sourceLine, to: nodeId(id, "L"), conductor: "live" },
    { kind: "bar", from: neutralBar, to: nodeId(id, "N"), conductor: "neutral" },
    { kind: "bar", from: earthBar, to: nodeId(id, "E"), conductor: "earth" },
  ],
  fcu: ({ id }) => throughLinks(id, "fuse"),
  isolator: ({ id }) => throughLinks(id, "contact"),
  "cooker-control": ({ id }) => throughLinks(id, "contact"),
  "plate-switch": (station) => switchLinks(station),
};

function throughLinks(id: StationId, liveKind: "fuse" | "contact"): LinkPair[] {
  return [
    { kind: liveKind, from: nodeId(id, "supply.L"), to: nodeId(id, "load.L"), conductor: "live" },
    { kind: "contact", from: nodeId(id, "supply.N"), to: nodeId(id, "load.N"), conductor: "neutral" },
  ];
}

function switchLinks({ id, settings }: Station): LinkPair[] {
  const link = (from: string, to: string, closedIn: 0 | 1): LinkPair => ({
    kind: "switch",
    from: nodeId(id, from),
    to: nodeId(id, to),
    conductor: "live",
    closedIn,
  });
  switch (settings?.switching ?? "one-way") {
    case "one-way":
      return [link("L", "SL", 1)];
    case "two-way":
      return [link("common", "strap1", 0), link("common", "strap2", 1)];
    case "intermediate":
      return [
        link("strap-in.strap1", "strap-out.strap1", 0),
        link("strap-in.strap2", "strap-out.strap2", 0),
        link("strap-in.strap1", "strap-out.strap2", 1),
        link("strap-in.strap2", "strap-out.strap1", 1),
      ];
  }
}

/** The entries of a station that are in use, by letter; undefined where all of them count. */
export type EntriesInUse = (station: StationId) => ReadonlyMap<string, EntryId> | undefined;

/**
 * What is common inside the accessories of a wiring: its nodes, the contacts on each, and the links between
 * nodes that a device, fuse, switch or bar makes. Copper between accessories is not in it. Of the entries all are
 * laid, or those in use: what is common inside a station is the same whichever of them are.
 */
export const busesOf = (wiring: Pick<Wiring, "stations">, inUse: EntriesInUse = () => undefined): Buses => {
  const buses: Buses = { nodes: new Map(), nodeOf: new Map(), links: [], entries: new Map(), switches: [] };
  const node = (id: NodeId, conductor: RoleClass, station?: StationId): BusNode => {
    const known = buses.nodes.get(id);
    if (known) return known;
    const made: BusNode = { id, index: buses.nodes.size, conductor, contacts: [] };
    if (station) made.station = station;
    buses.nodes.set(id, made);
    return made;
  };
  node(sourceLine, "live");
  node(neutralBar, "neutral");
  node(earthBar, "earth");
  for (const station of wiring.stations) {
    const { kind, id: at, settings } = station;
    // A station has a handful of buses and many contacts: each bus is looked up once.
    const own = new Map<string, BusNode>();
    const used = inUse(at);
    for (const { letter, side } of entriesOf(station)) {
      const entry = used ? used.get(letter) : entryId(at, letter);
      if (entry === undefined) continue;
      const places = (coreRoles(kind, side, settings?.switching) ?? []).map(({ core, role }): CorePlace => {
        const name = busName(kind, side, role);
        let bus = own.get(name);
        if (!bus) own.set(name, (bus = node(nodeId(at, name), roleClass(role), at)));
        const contact = contactId(entry, role);
        bus.contacts.push(contact);
        buses.nodeOf.set(contact, bus.id);
        return { core, role, contact, node: bus.id, index: bus.index };
      });
      buses.entries.set(entry, { station: at, side, places });
    }
    for (const link of linkPairs[station.kind]?.(station) ?? []) {
      const isIncoming = link.kind === "device" || link.kind === "bar";
      const { index: fromIndex } = node(link.from, link.conductor, isIncoming ? undefined : at);
      const { index: toIndex } = node(link.to, link.conductor, at);
      buses.links.push({ ...link, station: at, fromIndex, toIndex });
      if (link.closedIn !== undefined && buses.switches.at(-1) !== at) buses.switches.push(at);
    }
  }
  return buses;
};

/** The node a test face touches: the station's bus of that role, on the load side where it has two. */
export const nodeOfFront = (front: ContactId, buses: Buses): NodeId | undefined => {
  if (!isFront(front)) return buses.nodeOf.get(front);
  const station = stationOf(front);
  const role = roleOf(front);
  return [nodeId(station, role), nodeId(station, `load.${role}`)].find((id) => buses.nodes.has(id));
};
