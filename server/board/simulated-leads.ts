import type { BoardDescription } from "../../shared/board/board.schema.ts";
import {
  type CableId,
  cableOfConductor,
  conductorId,
  type ConductorId,
  contactId,
  type ContactId,
  endsOfConductor,
  type EntryId,
  entryOf,
} from "../../shared/board/ids.ts";
import type { CableSpec } from "../../shared/wiring/wiring.schema.ts";
import {
  conductorsOf,
  placesOfEntry,
  stationsById,
  straightCores,
} from "../../shared/wiring/conductors-of.ts";
import type { Plugged } from "../../shared/wiring/plugged.ts";
import type { BoardRequest } from "./scanner-port.ts";

/** The leads that are in on the simulated board: each between two contacts, with the code of its plug or none. */
export type Leads = ReadonlyMap<ConductorId, number | undefined>;

/** The leads a board came back with. Of contacts stacked on one another each is led to the first. */
export const leadsOf = ({ joins, codes }: Plugged): Leads => {
  const codeAt = new Map(codes.map(({ entry, code }) => [entry, code]));
  const codeOf = (join: ConductorId): number | undefined => {
    const [from, to] = cableOfConductor(join).split("~") as [EntryId, EntryId];
    return codeAt.get(from) ?? codeAt.get(to);
  };
  return new Map(joins.map((join) => [join, codeOf(join)]));
};

/**
 * The leads of a whole cable between two entries, core to core. A coded cable has the cores its code lists and no
 * others.
 */
export function leadsOfCable(
  board: BoardDescription,
  from: EntryId,
  to: EntryId,
  code?: number,
): ConductorId[] {
  const stations = stationsById(board.stations);
  const cores = board.codes?.find((known) => known.code === code)?.cores;
  const places = placesOfEntry(from, stations);
  return straightCores(from, to, stations)
    .filter(
      (pair) =>
        cores === undefined ||
        places.some(({ core, role }) => cores.includes(core) && pair.from === contactId(from, role)),
    )
    .map((pair) => conductorId(pair.from, pair.to));
}

/** The code of the cable of a size that joins most between two entries; undefined where the board has none. */
export function codeForCable(
  board: BoardDescription,
  from: EntryId,
  to: EntryId,
  csaMm2: number | undefined,
): number | undefined {
  const ofSize = (board.codes ?? []).filter((known) => known.csaMm2 === csaMm2);
  const joins = ({ code }: { code: number }): number => leadsOfCable(board, from, to, code).length;
  return ofSize.toSorted((a, b) => joins(b) - joins(a))[0]?.code;
}

/** The leads of cables as a scenario states them. */
export const leadsOfSpecs = (board: BoardDescription, cables: readonly CableSpec[]): Leads => {
  const stations = stationsById(board.stations);
  return new Map(
    cables.flatMap((cable) =>
      conductorsOf(cable, stations).map(({ from, to }) => [conductorId(from, to), undefined] as const),
    ),
  );
};

/** The leads of a cable as it is drawn; where plugs are stacked, those that touch it. */
export function leadsOfDrawnCable(leads: Leads, cable: CableId, ends: readonly ContactId[]): ConductorId[] {
  const own = [...leads.keys()].filter((lead) => cableOfConductor(lead) === cable);
  if (own.length > 0) return own;
  return [...leads.keys()].filter((lead) => endsOfConductor(lead).some((contact) => ends.includes(contact)));
}

/**
 * What to ask of the simulated board so that the leads `from` become the leads `to`: first what goes, then what
 * comes. A whole coded cable goes in as one, so that its plug keeps its code.
 */
export function requestsBetween(from: Leads, to: Leads, board: BoardDescription): BoardRequest[] {
  const goes = [...from.keys()].filter((lead) => !to.has(lead) || to.get(lead) !== from.get(lead));
  const comes = [...to.keys()].filter((lead) => !from.has(lead) || to.get(lead) !== from.get(lead));
  const requests = pullsOf(goes, from);
  const coded = new Set<CableId>();
  for (const lead of comes) {
    const [contactA, contactB] = endsOfConductor(lead);
    const code = to.get(lead);
    const cable = cableOfConductor(lead);
    if (code === undefined || !isWhole(to, cable, board, code)) {
      requests.push({ type: "plug", contactA, contactB });
    } else if (!coded.has(cable)) {
      coded.add(cable);
      const [entryA, entryB] = cable.split("~") as [EntryId, EntryId];
      requests.push({ type: "plug-cable", entryA, entryB, code });
    }
  }
  return requests;
}

/** Pulls a whole plug where all of it goes: so it is out even while its last pins were still going in. */
function pullsOf(goes: readonly ConductorId[], from: Leads): BoardRequest[] {
  const left = new Set(goes);
  const touching = (entry: EntryId): ConductorId[] =>
    [...from.keys()].filter((lead) => endsOfConductor(lead).some((contact) => entryOf(contact) === entry));
  const requests: BoardRequest[] = [];
  for (const lead of goes) {
    if (!left.has(lead)) continue;
    const [contactA, contactB] = endsOfConductor(lead);
    const entry = [contactA, contactB]
      .map(entryOf)
      .find((end) => touching(end).every((one) => left.has(one)));
    requests.push({ type: "pull", what: entry === undefined ? { contactA, contactB } : { entry } });
    for (const one of entry === undefined ? [lead] : touching(entry)) left.delete(one);
  }
  return requests;
}

/** The leads that are in once the board has done what it was asked. */
export function leadsAfter(leads: Leads, request: BoardRequest, board: BoardDescription): Leads {
  const after = new Map(leads);
  switch (request.type) {
    case "plug":
      return after.set(conductorId(request.contactA, request.contactB), undefined);
    case "plug-cable":
      for (const lead of leadsOfCable(board, request.entryA, request.entryB, request.code))
        after.set(lead, request.code);
      return after;
    case "pull": {
      const { what } = request;
      if (what === "all") return new Map();
      if ("contactA" in what) after.delete(conductorId(what.contactA, what.contactB));
      else
        for (const lead of leads.keys())
          if (endsOfConductor(lead).some((contact) => entryOf(contact) === what.entry)) after.delete(lead);
      return after;
    }
    case "probe":
    case "self-check":
    case "walk-test":
    case "test-lead":
      return leads;
  }
}

/** Leads as the simulated board is opened with: pairs of contacts, and the codes of their plugs at both ends. */
export function openingOf(leads: Leads): {
  groups: ContactId[][];
  codes: { entry: EntryId; code: number }[];
} {
  const codes = new Map<EntryId, number>();
  for (const [lead, code] of leads)
    if (code !== undefined) for (const contact of endsOfConductor(lead)) codes.set(entryOf(contact), code);
  return {
    groups: [...leads.keys()].map((lead) => endsOfConductor(lead)),
    codes: [...codes].map(([entry, code]) => ({ entry, code })),
  };
}

const isWhole = (leads: Leads, cable: CableId, board: BoardDescription, code: number): boolean => {
  const [from, to] = cable.split("~") as [EntryId, EntryId];
  return leadsOfCable(board, from, to, code).every((lead) => leads.has(lead));
};
