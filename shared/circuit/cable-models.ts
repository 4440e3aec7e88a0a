import {
  byId,
  cableId,
  conductorId,
  contactId,
  type ContactId,
  type EntryId,
  type Role,
  roleClass,
  type StationId,
  stationOf,
} from "../board/ids.ts";
import { type CoreRole, coreRoles } from "../board/station-kinds.ts";
import { installedCapacityA } from "../trade/capacity.ts";
import { usualCpcCsaMm2 } from "../trade/resistance.ts";
import type { CableSpec, Station } from "../wiring/wiring.schema.ts";
import { type Buses, nodeId, type NodeId } from "../wiring/buses.ts";
import { defaults } from "./defaults.ts";
import type { CableModel, ConductorModel, MissingCore } from "./model.ts";

interface Parts {
  buses: Buses;
  stations: ReadonlyMap<StationId, Station>;
  unknown: ReadonlySet<ContactId>;
}

/**
 * The cables of a wiring, sorted by id. Specs with the same two entries are one cable. Conductors at an unknown
 * contact are left out; contacts that no station has are told apart in `strays`, never thrown.
 */
export const cableModels = (
  specs: readonly CableSpec[],
  parts: Parts,
): { cables: CableModel[]; strays: ContactId[] } => {
  const strays = new Set<ContactId>();
  const byCable = new Map<string, CableModel>();
  for (const spec of specs) {
    const made = cableModel(spec, parts, strays);
    if (!made) continue;
    const known = byCable.get(made.id);
    if (known) mergeInto(known, made);
    else byCable.set(made.id, made);
  }
  const cables = [...byCable.values()].sort((a, b) => byId(a.id, b.id));
  for (const cable of cables) cable.conductors.sort((a, b) => byId(a.from, b.from) || byId(a.to, b.to));
  return { cables, strays: [...strays].sort(byId) };
};

function cableModel(spec: CableSpec, parts: Parts, strays: Set<ContactId>): CableModel | undefined {
  const { buses } = parts;
  const flip = spec.from > spec.to;
  const [from, to] = flip ? [spec.to, spec.from] : [spec.from, spec.to];
  const fromSide = buses.sideOf.get(from);
  const toSide = buses.sideOf.get(to);
  const roles = { from: coreRolesAt(from, parts), to: coreRolesAt(to, parts) };
  if (!fromSide) strays.add(contactId(from, "L"));
  if (!toSide) strays.add(contactId(to, "L"));
  if (!fromSide || !toSide) return undefined;
  const id = cableId(from, to);
  const straight = straightRoles(roles.from, roles.to);
  const rolePairs = spec.conductors
    ? spec.conductors.map(([a, b]): RolePair => (flip ? [b, a] : [a, b]))
    : straight;
  const conductors: ConductorModel[] = [];
  for (const [fromRole, toRole] of rolePairs) {
    const [one, two] = [contactId(from, fromRole), contactId(to, toRole)];
    // In a lead from an entry to itself neither end comes first.
    const isTurned = from === to && one > two;
    const [a, b] = isTurned ? [two, one] : [one, two];
    const fromNode = buses.nodeOf.get(a);
    const toNode = buses.nodeOf.get(b);
    if (!fromNode) strays.add(a);
    if (!toNode) strays.add(b);
    if (!fromNode || !toNode || a === b || parts.unknown.has(a) || parts.unknown.has(b)) continue;
    if (conductors.some((made) => made.from === a && made.to === b)) continue;
    const classA = roleClass(fromRole);
    conductors.push({
      id: conductorId(a, b),
      cable: id,
      from: a,
      to: b,
      fromNode,
      toNode,
      class: classA === roleClass(toRole) ? classA : "crossed",
    });
  }
  const model: CableModel = {
    id,
    from,
    to,
    fromStation: stationOf(from),
    toStation: stationOf(to),
    fromSide,
    toSide,
    fromLine: lineBus(from, roles.from, buses),
    toLine: lineBus(to, roles.to, buses),
    spec,
    conductors,
    // A core that is crossed though it runs straight, such as a switched line on a neutral, is missed by both classes.
    missing: isWhole(rolePairs === straight, straight, conductors)
      ? []
      : missingCores(straight, from, to, conductors, parts.unknown),
    circuits: [],
    method: spec.method ?? defaults.method,
  };
  addSizes(model, spec);
  return model;
}

type RolePair = [from: Role, to: Role];

const isWhole = (
  isStraight: boolean,
  straight: readonly RolePair[],
  conductors: readonly ConductorModel[],
): boolean =>
  isStraight &&
  conductors.length === straight.length &&
  conductors.every((conductor) => conductor.class !== "crossed");

/** Core by core, which role meets which where a cable runs straight. */
function straightRoles(from: readonly CoreRole[], to: readonly CoreRole[]): RolePair[] {
  const pairs: RolePair[] = [];
  for (const { core, role } of from) {
    const match = to.find((place) => place.core === core);
    if (match) pairs.push([role, match.role]);
  }
  return pairs;
}

/** The bus of an entry's first core: every entry begins with a live one. */
const lineBus = (entry: EntryId, [first]: readonly CoreRole[], buses: Buses): NodeId =>
  (first && buses.nodeOf.get(contactId(entry, first.role))) ?? nodeId(stationOf(entry), "L");

/** Core places of an entry; the entry is known to the buses. */
function coreRolesAt(entry: EntryId, { buses, stations }: Parts): CoreRole[] {
  const station = stations.get(stationOf(entry));
  const side = buses.sideOf.get(entry);
  if (!station || !side) return [];
  return coreRoles(station.kind, side, station.settings?.switching) ?? [];
}

function missingCores(
  straight: readonly RolePair[],
  fromEntry: EntryId,
  toEntry: EntryId,
  conductors: readonly ConductorModel[],
  unknown: ReadonlySet<ContactId>,
): MissingCore[] {
  return straight.flatMap(([fromRole, toRole]) => {
    const [from, to] = [contactId(fromEntry, fromRole), contactId(toEntry, toRole)];
    const carried = conductors.some(
      (conductor) =>
        conductor.class !== "crossed" &&
        (conductor.from === from || conductor.to === to || conductor.from === to),
    );
    if (carried || unknown.has(from) || unknown.has(to)) return [];
    // A core that would be crossed even if it ran straight is missed by both classes.
    const missedBy = new Set([roleClass(fromRole), roleClass(toRole)]);
    return [...missedBy].map((conductor) => ({
      id: conductorId(from, to),
      from,
      to,
      class: conductor,
      crossedBy: [],
    }));
  });
}

/** Size, length and what the cable may carry, as far as they are said. */
function addSizes(model: CableModel, spec: CableSpec): void {
  const { csaMm2, lengthM, ambientC, groupedCircuits, insulationMm } = spec;
  if (lengthM !== undefined) model.lengthM = lengthM;
  if (csaMm2 === undefined) {
    model.ratingLacks = "csaMm2";
    return;
  }
  model.csaMm2 = csaMm2;
  const cpcCsaMm2 = spec.cpcCsaMm2 ?? usualCpcCsaMm2(csaMm2);
  if (cpcCsaMm2 !== undefined) model.cpcCsaMm2 = cpcCsaMm2;
  const { method } = model;
  const ratingA = installedCapacityA({ csaMm2, method, ambientC, groupedCircuits, insulationMm });
  if (ratingA === undefined) model.ratingLacks = "csaMm2";
  else model.ratingA = ratingA;
}

/** Two specs for one pair of entries: their cores together; the smaller of two sizes, so that it errs to the safe side. */
function mergeInto(cable: CableModel, more: CableModel): void {
  for (const conductor of more.conductors)
    if (!cable.conductors.some(({ id }) => id === conductor.id)) cable.conductors.push(conductor);
  cable.missing = cable.missing.filter(({ id }) => more.missing.some((core) => core.id === id));
  if (cable.ratingA === undefined || (more.ratingA !== undefined && more.ratingA >= cable.ratingA)) return;
  const { csaMm2, cpcCsaMm2, ratingA, ratingLacks, method, spec } = more;
  Object.assign(cable, { csaMm2, cpcCsaMm2, ratingA, ratingLacks, method, spec });
}
