import {
  type CableId,
  type ConductorId,
  type ContactId,
  entryOf,
  type Role,
  roleOf,
  type StationId,
} from "../board/ids.ts";
import { type Core } from "../board/station-kinds.ts";
import { type Buses, busesOf, type InternalLink, type NodeId } from "../wiring/buses.ts";
import { cableModels } from "../circuit/cable-models.ts";
import type { CableModel, CircuitModel } from "../circuit/model.ts";
import type { Station, Wiring } from "../wiring/wiring.schema.ts";

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
  stations: ReadonlyMap<StationId, Station>;
  conductors: Conductor[];
  links: CopperLink[];
}

/**
 * The copper of a wiring as sensed. A cable whose spec lists no conductors has every core straight, core by core; a
 * conductor to a contact that is unknown, or that its station does not have, is left out.
 */
export function copperOf(wiring: Pick<Wiring, "stations" | "cables" | "unknown">): Copper {
  const buses = busesOf(wiring);
  const stations = new Map(wiring.stations.map((station) => [station.id, station]));
  const { cables } = cableModels(wiring.cables, { buses, unknown: new Set(wiring.unknown) });
  return copperOfModel({ buses, stations, cables });
}

/** The same from the model that the rules read. */
export function copperOfModel(
  model: Pick<CircuitModel, "buses" | "stations"> & { cables: readonly CableModel[] },
): Copper {
  const { buses, stations, cables } = model;
  const nodes = [...buses.nodes.keys()];
  const nodeIndex = new Map(nodes.map((node, index) => [node, index]));
  const conductors = cables.flatMap(({ id: cable, conductors: cores, csaMm2, cpcCsaMm2, lengthM }) =>
    cores.map(({ id, from, to, fromIndex, toIndex }): Conductor => {
      // Where earth is crossed with another role nobody can tell which core it is; the larger one is taken.
      const core = coreAt(roleOf(from) === "E" ? to : from, buses);
      return {
        cable,
        id,
        from,
        to,
        fromNode: fromIndex,
        toNode: toIndex,
        core,
        csaMm2: core === "earth" ? cpcCsaMm2 : csaMm2,
        lengthM,
        jointOhm: 0,
      };
    }),
  );
  const links = buses.links.map((link) => ({
    ...link,
    fromNode: link.fromIndex,
    toNode: link.toIndex,
  }));
  return { buses, nodes, nodeIndex, stations, conductors, links };
}

function coreAt(contact: ContactId, { entries }: Buses): Core {
  const usual = usualCore[roleOf(contact)];
  if (usual) return usual;
  return entries.get(entryOf(contact))?.places.find((place) => place.contact === contact)?.core ?? "brown";
}

/** Roles that land on the same core at every entry; the switched line and the straps do not. */
const usualCore: Partial<Record<Role, Core>> = { L: "brown", N: "blue", E: "earth", common: "brown" };
