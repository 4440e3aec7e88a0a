import { contactId, type ContactId, type EntryId, type StationId, stationOf } from "../board/ids.ts";
import { nodeId, nodeOfFront } from "../wiring/buses.ts";
import { supply } from "../trade/supply.ts";
import type { RingEndState } from "../wiring/test-words.ts";
import type { Load } from "../wiring/wiring.schema.ts";
import type { AsBuilt } from "./hidden-faults.ts";
import type { Link, Network, Resistor } from "./network.ts";
import { conductorOhm, isClosed, leastConductorOhm, loadNodes } from "./wiring-network.ts";

type Side = "L" | "N" | "E";

/**
 * What has been done to the two ends of a ring at its way: in their terminals, taken out, or line of one end put to
 * the other conductor of the other end (right) or of the same end (wrong).
 */
export interface RingEnds {
  ends: [EntryId, EntryId];
  state: RingEndState;
  /** The conductor that line is crossed with: N in step 2, E in step 3. Needed where they are crossed. */
  with?: "N" | "E";
}

/** What the learner has done before measuring. Nothing is assumed: what is not said here is as it is in use. */
export interface MeterSetup {
  /** Ways whose device is on; a device that is off parts its way from the others. */
  devicesOn?: ReadonlySet<StationId>;
  positions?: ReadonlyMap<StationId, 0 | 1>;
  /** Loads that are still plugged in or lamps that are still in: they read as what they are. */
  loadsIn?: readonly Load[];
  /** What else lies between line and neutral of a station, by what the meter's function sees of it. */
  partsIn?: readonly { station: StationId; resistanceOhm: number }[];
  /** Links made at a way between two of its terminals, such as L to E for R1 + R2. */
  links?: readonly { way: StationId; between: [Side, Side] }[];
  /** By way, what was done to the ends of its ring. */
  ringEnds?: ReadonlyMap<StationId, RingEnds>;
  /** Of the conductors, 20 °C where nothing is said. */
  temperatureC?: number;
}

/** A network for the meter, and where a probe on a contact or a test face touches it. */
export interface MeterNetwork {
  network: Omit<Network, "held">;
  nodeOfProbe(contact: ContactId): number | undefined;
}

/**
 * The network a meter sees in a circuit that is dead: conductors, closed links, insulation, loads left in (230² / P)
 * and what was done at the way. There is no supply in it.
 */
export function meterNetwork(built: AsBuilt, setup: MeterSetup): MeterNetwork {
  const { temperatureC = 20 } = setup;
  const terminals = terminalsOf(built, setup);
  const resistors: Resistor[] = [];
  const ends = built.conductors.map(({ from, fromNode, to, toNode }) => ({
    a: terminals.nodeOf(from, fromNode),
    b: terminals.nodeOf(to, toNode),
  }));
  built.conductors.forEach((conductor, index) => {
    resistors.push({
      ...ends[index]!,
      resistanceOhm: conductorOhm(conductor, temperatureC) ?? leastConductorOhm,
    });
  });
  for (const { one, two, resistanceOhm } of built.leaks) {
    resistors.push({ a: ends[one]!.a, b: ends[two]!.a, resistanceOhm });
  }
  const loadOhm = (powerW: number): number => supply.nominalV ** 2 / powerW;
  const partsIn = [
    ...(setup.loadsIn ?? []).map(({ station, powerW }) => ({ station, resistanceOhm: loadOhm(powerW) })),
    ...(setup.partsIn ?? []),
  ];
  for (const { station, resistanceOhm } of partsIn) {
    const nodes = loadNodes(built, station);
    if (nodes) resistors.push({ a: nodes.lineNode, b: nodes.neutralNode, resistanceOhm });
  }
  const links: Link[] = built.links
    .filter((link) => isClosed(link, setup) && (link.kind !== "device" || setup.devicesOn?.has(link.station)))
    .map((link) => ({ a: link.fromNode, b: link.toNode }));
  for (const { way, between } of setup.links ?? []) {
    const [a, b] = between.map((side) => built.nodeIndex.get(nodeId(way, side)));
    if (a !== undefined && b !== undefined) links.push({ a, b });
  }
  links.push(...terminals.crossings());
  const onConductor = new Map(
    built.conductors.flatMap(({ from, to }, index) => [
      [from, ends[index]!.a] as const,
      [to, ends[index]!.b] as const,
    ]),
  );
  const nodeOfProbe = (contact: ContactId): number | undefined => {
    const id = nodeOfFront(contact, built.buses);
    return onConductor.get(contact) ?? (id === undefined ? undefined : built.nodeIndex.get(id));
  };
  return { network: { nodeCount: terminals.nodeCount(), resistors, links }, nodeOfProbe };
}

/** Where the ends of a ring are out of their terminals, every contact of the way is a piece of copper by itself. */
function terminalsOf(built: AsBuilt, { ringEnds = new Map<StationId, RingEnds>() }: MeterSetup) {
  const apart = new Map<ContactId, number>();
  let nodeCount = built.nodes.length;
  const nodeOf = (contact: ContactId, joined: number): number => {
    const state = ringEnds.get(stationOf(contact))?.state ?? "joined";
    if (state === "joined") return joined;
    const known = apart.get(contact) ?? nodeCount++;
    apart.set(contact, known);
    return known;
  };
  const crossings = (): Link[] =>
    [...ringEnds.values()].flatMap(({ ends: [one, two], state, with: other = "N" }) => {
      if (state !== "crossed" && state !== "crossed-wrongly") return [];
      const cross = (line: EntryId, far: EntryId): Link => ({
        a: nodeOf(contactId(line, "L"), -1),
        b: nodeOf(contactId(far, other), -1),
      });
      return state === "crossed" ? [cross(one, two), cross(two, one)] : [cross(one, one), cross(two, two)];
    });
  return { nodeOf, crossings, nodeCount: () => nodeCount };
}
