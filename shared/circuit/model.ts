import type { CableId, ConductorId, ContactId, EntryId, RoleClass, StationId } from "../board/ids.ts";
import type { Side } from "../board/station-kinds.ts";
import type { CableSpec, Load, ReferenceMethod, Station, Wiring } from "../wiring/wiring.schema.ts";
import type { Buses, NodeId } from "../wiring/buses.ts";
import type { ConductorModel } from "./conductor-model.ts";
import type { ContactConductors } from "./contact-conductors.ts";

/** A core that the cable would have if it ran straight, and that joins nothing there. */
export interface MissingCore {
  id: ConductorId;
  from: ContactId;
  to: ContactId;
  /** The numbers of its contacts and of their nodes. */
  fromContactIndex: number;
  toContactIndex: number;
  fromNode: NodeId;
  toNode: NodeId;
  class: RoleClass;
  /** Conductors that are at its two contacts and go elsewhere: the core is crossed or misplaced, not left out. */
  crossedBy: ConductorId[];
}

/** The protective device or fuse that a cable relies on. */
export interface Upstream {
  station: StationId;
  kind: "device" | "fuse";
  ratingA?: number;
}

export interface CableModel {
  id: CableId;
  from: EntryId;
  to: EntryId;
  fromStation: StationId;
  toStation: StationId;
  fromSide: Side;
  toSide: Side;
  /** The buses its first live core lands on at its ends, or would: what it brings. */
  fromLine: NodeId;
  toLine: NodeId;
  /** As stated, for what the model does not repeat (depth, metal-framed wall). */
  spec: CableSpec;
  conductors: ConductorModel[];
  missing: MissingCore[];
  csaMm2?: number;
  cpcCsaMm2?: number;
  lengthM?: number;
  method: ReferenceMethod;
  /** Iz as installed, with Ca, Cg and Ci. */
  ratingA?: number;
  /** The field of the wiring format that keeps ratingA from being known. */
  ratingLacks?: string;
  /** The device or fuse before it; where several feed it, the one of the highest rating. */
  upstream?: Upstream;
  /** The ways it belongs to, by its line, or by neutral and earth where it has no line. */
  circuits: StationId[];
  zone?: Zone;
}

/** Cores between one pair of stations that make one cable route: one cable, or single leads that complete each other. */
export interface Run {
  cables: CableModel[];
  a: StationId;
  b: StationId;
  /** Classes that go straight through. */
  classes: ReadonlySet<RoleClass>;
  missing: MissingCore[];
  /** Smallest Iz of its cables; left out while one is not known. */
  ratingA?: number;
}

/** A block of runs in which every two lie on a common cycle. */
export interface Ring {
  runs: Run[];
  cables: CableModel[];
  /** Stations round it, the way first; in no particular order where it is bridged. */
  stations: StationId[];
  isBridged: boolean;
  /** Which classes go all the way round. In a bridged block: which are in every run. */
  closes: Record<RoleClass, boolean>;
}

/** A run that is in no ring, seen from the way outwards. */
export interface Branch {
  index: number;
  run: Run;
  near: StationId;
  far: StationId;
  /** Entry where it lands at the far station. */
  farEntry: EntryId;
  nearEntry: EntryId;
  /** Index of the branch before it; left out where it leaves a ring or the way. */
  parent?: number;
  /** 1 where it leaves a ring or the way. */
  depth: number;
  /** The branches from `index` up to but not including this one are itself and all beyond it. */
  end: number;
  /** True where current is taken at its far end. */
  isPoint: boolean;
  /** Points at its far end: several where a loop lies there. */
  points: StationId[];
  /** Points at and beyond its far end. */
  pointCount: number;
  /** True where a loop lies somewhere in the branch that leaves the ring or the way. */
  hasLoop: boolean;
}

/** The shape of what one device or fuse feeds. */
export interface Shape {
  /** Blocks through the way: one is a ring, two are two rings on a way. None behind a fuse. */
  rings: Ring[];
  /** Blocks that are not through the way, or behind a fuse. */
  loops: Ring[];
  /** Everything else, outwards, each branch right before what is beyond it. */
  branches: Branch[];
}

/** A branch that the upstream device does not protect by itself, or that ends at its one point. */
export interface Spur {
  /** The branch that leaves the ring, the way or cable of full rating, at its `near` station. */
  first: Branch;
  /** All branches of it, `first` included, each before what is beyond it. */
  branches: Branch[];
  points: StationId[];
  /** Points with no other point of the spur before them. */
  nearPoints: StationId[];
  /** Branches that go on from a near point to another. */
  outer: Branch[];
  /** True where its only point is an FCU. */
  isFused: boolean;
}

export interface SpurTable {
  spurs: Spur[];
  /** Branches from a ring whose cable carries the device's full rating and that feed several points. */
  heavy: Branch[];
  /** Legs that leave the way, cannot carry its device, and are no spurs, for there is nothing they could leave. */
  legs: Branch[];
  /** Branches of which size or device are not known, so that they may be spurs or not. */
  lacking: Branch[];
}

/** All that one device or fuse feeds up to the next fuse: the part in which every cable relies on the same rating. */
export interface Zone {
  index: number;
  /** What feeds it: the way's device, or the fuses; more than one is a fault. */
  sources: Upstream[];
  /** The source with the highest rating, or the first while one is not known. */
  upstream: Upstream;
  isFused: boolean;
  /** The ways at the head of it. */
  ways: StationId[];
  /** Stations with a live bus in it, the sources included. */
  stations: StationId[];
  /** Accessories that current is taken from; an FCU counts where it is fed from. */
  points: StationId[];
  /** Leads with both ends in one station are not among them: they feed nothing. */
  cables: CableModel[];
  shape: Shape;
  /** Empty behind a fuse: there any number of points may follow each other. */
  spurs: SpurTable;
}

/** Where the lines of several ways meet: what hangs on which of them cannot be told. */
export interface Meeting {
  ways: StationId[];
  zones: Zone[];
  /** Connection units through which they meet, if any. */
  units: StationId[];
}

/** All that one way feeds. Two ways whose lines meet share their zones. */
export interface Circuit {
  way: StationId;
  /** Its unfused side; always there, without cables where the way is not used. */
  zone: Zone;
  /** The parts behind fuses, nearest first. */
  fusedZones: Zone[];
  isUsed: boolean;
  /** True where the line of another way meets its own. */
  isMet: boolean;
}

/** A fuse between two zones. */
export interface FusedLink {
  fcu: StationId;
  from: Zone;
  to: Zone;
  /** True where the feed comes in at the load side. */
  isReversed: boolean;
}

/** Which ways' conductor, of the node's own class, reaches a node. Crossed conductors are left out. */
export interface Reach {
  /** Whatever the switches do. */
  always: readonly StationId[];
  /** In some position of the switches. */
  sometimes: readonly StationId[];
  /** True where in every position some way reaches it. */
  isPermanent: boolean;
}

/** A lighting point with the switches that turn it on and off. */
export interface Lamp {
  station: StationId;
  live: NodeId;
  neutral: NodeId;
  isLitSometimes: boolean;
  isLitAlways: boolean;
  /** Plate switches that change it in some position of the others. */
  controlledBy: StationId[];
  /** Two-way and intermediate switches that change it in some positions of the others of their kind and not in all. */
  halfControlledBy: StationId[];
}

/** Cables that no way reaches by any conductor. */
export interface Island {
  cables: CableModel[];
  stations: StationId[];
}

/** Everything the rules read of a wiring. Lists are in the order of ids. */
export interface CircuitModel {
  wiring: Wiring;
  /** Of the entries that a cable or a reading names; `busesOf` gives those of all entries. */
  buses: Buses;
  stations: ReadonlyMap<StationId, Station>;
  loadsAt: ReadonlyMap<StationId, Load[]>;
  cables: CableModel[];
  cableById: ReadonlyMap<CableId, CableModel>;
  conductors: ConductorModel[];
  /** Those of them whose ends are of different classes. */
  crossed: ConductorModel[];
  conductorsAt: ContactConductors;
  /** Stations where a conductor lands. */
  used: ReadonlySet<StationId>;
  /** Those that hang on one way, each device's own and those behind its fuses. */
  zones: Zone[];
  /** The others. */
  meetings: Meeting[];
  /** Of either kind. */
  zoneOfNode: (node: NodeId) => Zone | undefined;
  circuits: Circuit[];
  /** Fuses between two zones that hang on one way. */
  fusedLinks: FusedLink[];
  reachOf: (node: NodeId) => Reach;
  /** Which nodes are one by conductors of their class, closed fuses, contacts and switches: equal where joined. */
  groupOf: (node: NodeId) => number;
  lamps: Lamp[];
  islands: Island[];
  /** Contacts whose state the board cannot tell; conductors at them are left out of everything above. */
  unknown: ReadonlySet<ContactId>;
  /** Contacts that a cable names and no station has. */
  strays: ContactId[];
}
