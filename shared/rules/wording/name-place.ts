import {
  type CableId,
  type ConductorId,
  type ContactId,
  contactIdPattern,
  endsOfCable,
  endsOfConductor,
  type EntryId,
  entryIdPattern,
  entryOf,
  isFront,
  roleOf,
  type StationId,
  stationOf,
} from "../../board/ids.ts";
import { entriesOf } from "../../wiring/buses.ts";
import type { Station, Wiring } from "../../wiring/wiring.schema.ts";
import { type Forms, grammars, type Terms } from "./catalogue.ts";

/** Names a scenario gives its stations, in the language that is spoken. */
export type StationNames = ReadonlyMap<StationId, string>;

/** Gives the name of anything on a board by its id, in every case; undefined for what is not on it. */
export type Namer = (id: string) => Forms | undefined;

/** A namer for the stations, entries, contacts, cables and conductors of a wiring. */
export function namerOf(wiring: Pick<Wiring, "stations">, terms: Terms, names?: StationNames): Namer {
  const stations = new Map(wiring.stations.map((station) => [station.id as string, station]));
  const stationForms = (id: string): Forms | undefined => {
    const station = stations.get(id);
    return station && nameOfStation(station, terms, names?.get(station.id));
  };
  const entryForms = (id: EntryId): Forms | undefined => {
    const station = stations.get(stationOf(id));
    const forms = stationForms(stationOf(id));
    const letter = letterOf(id);
    const side = station && entriesOf(station).find((entry) => entry.letter === letter)?.side;
    return forms && side && terms.entry(letter, terms.sides[side], forms);
  };
  const contactForms = (id: ContactId): Forms | undefined => {
    const forms = stationForms(stationOf(id));
    if (isFront(id)) return forms && terms.front(roleOf(id), forms);
    return forms && terms.contact(roleOf(id), letterOf(entryOf(id)), forms);
  };
  const pairForms = (id: string): Forms | undefined => {
    const [a = "", b = ""] = id.split("~");
    if (contactIdPattern.test(a)) return conductorForms(id as ConductorId);
    return cableForms(id as CableId, a, b);
  };
  const cableForms = (id: CableId, a: string, b: string): Forms | undefined => {
    if (!entryIdPattern.test(a) || !entryIdPattern.test(b)) return undefined;
    const [fromEnd, toEnd] = endsOfCable(id);
    const [from, to] = [stationForms(stationOf(fromEnd)), stationForms(stationOf(toEnd))];
    if (stationOf(fromEnd) !== stationOf(toEnd)) return from && to && terms.cable(from, to);
    // Within one station only the entries tell its ends apart.
    const [fromEntry, toEntry] = [entryForms(fromEnd), entryForms(toEnd)];
    return fromEntry && toEntry && terms.lead(fromEntry, toEntry);
  };
  const conductorForms = (id: ConductorId): Forms | undefined => {
    const [a, b] = endsOfConductor(id);
    const [from, to] = [stationForms(stationOf(a)), stationForms(stationOf(b))];
    if (roleOf(a) === roleOf(b)) return from && to && terms.conductor(roleOf(a), from, to);
    const [fromContact, toContact] = [contactForms(a), contactForms(b)];
    return fromContact && toContact && terms.lead(fromContact, toContact);
  };
  return (id) => {
    if (id.includes("~")) return pairForms(id);
    if (contactIdPattern.test(id)) return contactForms(id as ContactId);
    if (entryIdPattern.test(id)) return entryForms(id as EntryId);
    return stationForms(id);
  };
}

/** Kind, printed label and the scenario's name of a station: "socket outlet 3 (Armchair)". */
function nameOfStation(station: Station, terms: Terms, name: string | undefined): Forms {
  const { appliance } = station.settings ?? {};
  const kind =
    station.kind === "appliance" && appliance ? terms.appliances[appliance] : terms.kinds[station.kind];
  // A station without a label that is numbered in its id is called by that number: socket-3 is 3.
  const label = station.label ?? /-([0-9]+)$/.exec(station.id)?.[1];
  const rest = [label, name && `(${name})`].filter((word) => word !== undefined && word !== "");
  if (rest.length === 0) return terms.bare(kind);
  return mapForms(kind, (form) => [form, ...rest].join(" "));
}

/** Each case of a name changed the same way. */
export function mapForms(forms: Forms, change: (form: string) => string): Forms {
  return Object.fromEntries(grammars.map((grammar) => [grammar, change(forms[grammar])])) as unknown as Forms;
}

function letterOf(entry: EntryId): string {
  return entry.slice(entry.lastIndexOf(".") + 1);
}
