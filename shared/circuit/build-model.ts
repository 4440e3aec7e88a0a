import {
  byId,
  type ConductorId,
  type ContactId,
  type EntryId,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import type { Load, Wiring } from "../wiring/wiring.schema.ts";
import { busesOf, type EntriesInUse, nodeId } from "../wiring/buses.ts";
import { cableModels } from "./cable-models.ts";
import { ContactConductors } from "./contact-conductors.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import { lampsOf } from "./lamps.ts";
import { meetingsOf } from "./meetings.ts";
import type { CableModel, Circuit, CircuitModel, Island, MissingCore, Zone } from "./model.ts";
import { reachTable } from "./reach.ts";
import { zonesOf } from "./zones.ts";

/**
 * Everything the rules read of a wiring: cables with what they may carry and what protects them, zones between
 * devices and fuses with their shape, which ways reach each node, lamps with their switches. Deterministic,
 * never throws on a wiring of the right form, and near-linear in the number of cables.
 */
export const buildModel = (wiring: Wiring): CircuitModel => {
  const stations = new Map(
    [...wiring.stations].sort((a, b) => byId(a.id, b.id)).map((station) => [station.id, station]),
  );
  const buses = busesOf({ stations: [...stations.values()] }, entriesInUse(wiring));
  const unknown = new Set<ContactId>(wiring.unknown);
  const { cables, strays } = cableModels(wiring.cables, { buses, unknown });
  const conductors = cables.flatMap((cable) => cable.conductors);
  const used = new Set<StationId>();
  const conductorsAt = new ContactConductors(buses.contactCount);
  for (const { fromStation, toStation, conductors: own } of cables) {
    if (own.length > 0) used.add(fromStation).add(toStation);
    for (const conductor of own) conductorsAt.add(conductor);
  }
  for (const cable of cables)
    for (const core of cable.missing) core.crossedBy = conductorsInPlaceOf(core, conductorsAt);
  const table = reachTable(buses, conductors);
  const { zones: all, fusedLinks, zoneOfNode } = zonesOf(buses, stations, cables, used);
  const meetings = meetingsOf(all, fusedLinks);
  const met = new Set(meetings.flatMap((meeting) => meeting.zones));
  const zones = met.size === 0 ? all : all.filter((zone) => !met.has(zone));
  for (const cable of cables) if (!cable.zone) cable.circuits = waysByReturn(cable, table.reachOf);
  return {
    wiring,
    buses,
    stations,
    loadsAt: loadsAt(wiring.loads ?? []),
    cables,
    cableById: new Map(cables.map((cable) => [cable.id, cable])),
    conductors,
    crossed: conductors.filter((conductor) => conductor.class === "crossed"),
    conductorsAt,
    used,
    zones,
    meetings,
    zoneOfNode,
    circuits: circuitsOf(stations, { all, met }, zoneOfNode, used),
    fusedLinks: met.size === 0 ? fusedLinks : fusedLinks.filter(({ from }) => !met.has(from)),
    reachOf: table.reachOf,
    groupOf: table.groupOf,
    lamps: lampsOf(stations.values(), used, table),
    islands: islandsOf(cables),
    unknown,
    strays,
  };
};

/**
 * Those entries of the stations that a cable names, or all where a reading stands on the station, so that a large
 * board with few cables costs little.
 */
function entriesInUse({ cables, readings = [] }: Wiring): EntriesInUse {
  const byStation = new Map<string, Map<string, EntryId>>();
  const note = (entry: EntryId): void => {
    const dot = entry.indexOf(".");
    const station = entry.slice(0, dot);
    const letter = entry.slice(dot + 1);
    const known = byStation.get(station);
    if (known) known.set(letter, entry);
    else byStation.set(station, new Map([[letter, entry]]));
  };
  for (const { from, to } of cables) {
    note(from);
    note(to);
  }
  const probed = new Set(
    readings.flatMap(({ red, black }) =>
      [red, black].flatMap((contact) => (contact ? [stationOf(contact)] : [])),
    ),
  );
  const none: ReadonlyMap<string, EntryId> = new Map();
  return (station) => (probed.has(station) ? undefined : (byStation.get(station) ?? none));
}

/** A core that is missing because its contacts are taken: put right, the one mends the other. */
function conductorsInPlaceOf(
  { fromContactIndex, toContactIndex }: MissingCore,
  conductorsAt: ContactConductors,
): ConductorId[] {
  const there = [...conductorsAt.at(fromContactIndex), ...conductorsAt.at(toContactIndex)].map(
    ({ id }) => id,
  );
  return there.length < 2 ? there : [...new Set(there)].sort(byId);
}

function loadsAt(loads: readonly Load[]): Map<StationId, Load[]> {
  const byStation = new Map<StationId, Load[]>();
  for (const load of loads) {
    const known = byStation.get(load.station);
    if (known) known.push(load);
    else byStation.set(load.station, [load]);
  }
  return byStation;
}

/** A cable without a line belongs to the ways its neutral or earth comes from. */
function waysByReturn(cable: CableModel, reachOf: CircuitModel["reachOf"]): StationId[] {
  const ways = new Set<StationId>();
  for (const { fromNode, toNode } of cable.conductors)
    for (const node of [fromNode, toNode]) for (const way of reachOf(node).sometimes) ways.add(way);
  return [...ways].sort(byId);
}

function circuitsOf(
  stations: CircuitModel["stations"],
  { all, met }: { all: readonly Zone[]; met: ReadonlySet<Zone> },
  zoneOfNode: CircuitModel["zoneOfNode"],
  used: ReadonlySet<StationId>,
): Circuit[] {
  return [...stations.values()].flatMap(({ id, kind }): Circuit[] => {
    const zone = kind === "way" ? zoneOfNode(nodeId(id, "L")) : undefined;
    if (!zone) return [];
    const fusedZones = all.filter((other) => other.isFused && other.ways.includes(id));
    return [{ way: id, zone, fusedZones, isUsed: used.has(id), isMet: met.has(zone) }];
  });
}

function islandsOf(cables: readonly CableModel[]): Island[] {
  const loose = cables.filter(({ circuits, conductors }) => circuits.length === 0 && conductors.length > 0);
  if (loose.length === 0) return [];
  const index = new Map<StationId, number>();
  const indexOf = (station: StationId): number => {
    const known = index.get(station);
    if (known !== undefined) return known;
    index.set(station, index.size);
    return index.size - 1;
  };
  for (const { fromStation, toStation } of loose) {
    indexOf(fromStation);
    indexOf(toStation);
  }
  const sets = new DisjointSets(index.size);
  for (const { fromStation, toStation } of loose) sets.join(indexOf(fromStation), indexOf(toStation));
  const islands = new Map<number, CableModel[]>();
  for (const cable of loose) {
    const root = sets.find(indexOf(cable.fromStation));
    const known = islands.get(root);
    if (known) known.push(cable);
    else islands.set(root, [cable]);
  }
  return [...islands.values()].map((list) => ({
    cables: list,
    stations: [...new Set(list.flatMap(({ fromStation, toStation }) => [fromStation, toStation]))].sort(byId),
  }));
}
