import {
  byId,
  cableId,
  conductorId,
  contactId,
  type ContactId,
  type EntryId,
  roleClass,
} from "../board/ids.ts";
import { pairByCore } from "../board/pair-by-core.ts";
import { installedCapacityA } from "../trade/capacity.ts";
import { usualCpcCsaMm2 } from "../trade/resistance.ts";
import type { CableSpec } from "../wiring/wiring.schema.ts";
import { type BusEntry, type Buses, type CorePlace, nodeId, type NodeId } from "../wiring/buses.ts";
import { defaults } from "./defaults.ts";
import type { ConductorModel } from "./conductor-model.ts";
import type { CableModel, MissingCore } from "./model.ts";

interface Parts {
  buses: Buses;
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
  for (const cable of cables) sortConductors(cable.conductors);
  return { cables, strays: [...strays].sort(byId) };
};

/** By contacts. A cable has three conductors or a few more: sorted by insertion, which takes no memory. */
function sortConductors(conductors: ConductorModel[]): void {
  for (let index = 1; index < conductors.length; index++) {
    const conductor = conductors[index]!;
    let at = index;
    for (; at > 0 && comesAfter(conductors[at - 1]!, conductor); at--) conductors[at] = conductors[at - 1]!;
    conductors[at] = conductor;
  }
}

const comesAfter = (a: ConductorModel, b: ConductorModel): boolean =>
  a.from > b.from || (a.from === b.from && a.to > b.to);

function cableModel(
  spec: CableSpec,
  { buses, unknown }: Parts,
  strays: Set<ContactId>,
): CableModel | undefined {
  const flip = spec.from > spec.to;
  const [from, to] = flip ? [spec.to, spec.from] : [spec.from, spec.to];
  const near = buses.entries.get(from);
  const far = buses.entries.get(to);
  if (!near) strays.add(contactId(from, "L"));
  if (!far) strays.add(contactId(to, "L"));
  if (!near || !far) return undefined;
  const id = cableId(from, to);
  const straight = pairByCore(near.places, far.places);
  const cores = spec.conductors
    ? statedCores(spec.conductors, { from, to, near, far, flip }, strays)
    : straight;
  const conductors: ConductorModel[] = [];
  for (const [one, two] of cores) {
    // In a lead from an entry to itself neither end comes first.
    const isTurned = from === to && one.contact > two.contact;
    const [a, b] = isTurned ? [two, one] : [one, two];
    if (a.contact === b.contact || unknown.has(a.contact) || unknown.has(b.contact)) continue;
    if (conductors.some((made) => made.from === a.contact && made.to === b.contact)) continue;
    const classA = roleClass(a.role);
    conductors.push({
      id: conductorId(a.contact, b.contact),
      cable: id,
      from: a.contact,
      to: b.contact,
      fromNode: a.node,
      toNode: b.node,
      fromIndex: a.index,
      toIndex: b.index,
      fromContactIndex: a.contactIndex,
      toContactIndex: b.contactIndex,
      class: classA === roleClass(b.role) ? classA : "crossed",
    });
  }
  const model: CableModel = {
    id,
    from,
    to,
    fromStation: near.station,
    toStation: far.station,
    fromSide: near.side,
    toSide: far.side,
    fromLine: lineBus(near),
    toLine: lineBus(far),
    spec,
    conductors,
    // A core that is crossed though it runs straight, such as a switched line on a neutral, is missed by both classes.
    missing: isWhole(cores === straight, straight, conductors)
      ? []
      : missingCores(straight, conductors, unknown),
    circuits: [],
    method: spec.method ?? defaults.method,
  };
  addSizes(model, spec);
  return model;
}

type CorePair = readonly [from: CorePlace, to: CorePlace];

interface Ends {
  from: EntryId;
  to: EntryId;
  near: BusEntry;
  far: BusEntry;
  /** The specification names the far end first. */
  flip: boolean;
}

/** The pairs of places a specification states; those that no entry has are strays. */
function statedCores(
  stated: NonNullable<CableSpec["conductors"]>,
  { from, to, near, far, flip }: Ends,
  strays: Set<ContactId>,
): CorePair[] {
  const pairs: CorePair[] = [];
  for (const [a, b] of stated) {
    const [nearRole, farRole] = flip ? [b, a] : [a, b];
    const one = near.places.find(({ role }) => role === nearRole);
    const two = far.places.find(({ role }) => role === farRole);
    if (!one) strays.add(contactId(from, nearRole));
    if (!two) strays.add(contactId(to, farRole));
    if (one && two) pairs.push([one, two]);
  }
  return pairs;
}

const isWhole = (
  isStraight: boolean,
  straight: readonly CorePair[],
  conductors: readonly ConductorModel[],
): boolean =>
  isStraight &&
  conductors.length === straight.length &&
  conductors.every((conductor) => conductor.class !== "crossed");

/** The bus of an entry's first core: every entry begins with a live one. */
const lineBus = ({ station, places: [first] }: BusEntry): NodeId => first?.node ?? nodeId(station, "L");

function missingCores(
  straight: readonly CorePair[],
  conductors: readonly ConductorModel[],
  unknown: ReadonlySet<ContactId>,
): MissingCore[] {
  return straight.flatMap(([near, far]) => {
    const [from, to] = [near.contact, far.contact];
    const carried = conductors.some(
      (conductor) =>
        conductor.class !== "crossed" &&
        (conductor.from === from || conductor.to === to || conductor.from === to),
    );
    if (carried || unknown.has(from) || unknown.has(to)) return [];
    // A core that would be crossed even if it ran straight is missed by both classes.
    const missedBy = new Set([roleClass(near.role), roleClass(far.role)]);
    return [...missedBy].map((conductor) => ({
      id: conductorId(from, to),
      from,
      to,
      fromContactIndex: near.contactIndex,
      toContactIndex: far.contactIndex,
      fromNode: near.node,
      toNode: far.node,
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
