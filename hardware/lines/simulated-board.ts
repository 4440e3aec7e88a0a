import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type BoardLeads, noLeads } from "../../shared/board/board-leads.ts";
import { byId, type ContactId, type EntryId, entryOf } from "../../shared/board/ids.ts";
import { coreRolesOf, stationsById, straightCores } from "../../shared/wiring/conductors-of.ts";
import { type BoardLines, boardLines } from "./board-lines.ts";
import type { LineIndex } from "./line-index.ts";
import type { FromScanner, ToScanner } from "../scan/scanner-messages.ts";
import { type LineFault, SimulatedLines } from "./simulated-lines.ts";

type Refused = Extract<FromScanner, { type: "refused" }>;
/** Why hands cannot do what they were asked, or undefined where they did. */
export type Hindrance = Pick<Refused, "code" | "facts"> | undefined;
type PullWhat = Extract<ToScanner, { type: "pull" }>["what"];

/** The pins of a cable's plug make contact one after the other: by hand it goes in at some 0.1 m/s, they differ by a millimetre. */
const pinApartMs = 10;

/** One more pin that makes contact at its time: a core of the cable, or the code of its plugs. */
type Pin = { atMs: number; entries: readonly [EntryId, EntryId] } & (
  { lead: readonly [ContactId, ContactId] } | { code: number }
);

/** Hands on a simulated board, in its own terms: they plug, pull, touch with probes, and break things. */
export class SimulatedBoard {
  readonly lines: SimulatedLines;
  readonly #board: BoardLines;
  readonly #stations: ReturnType<typeof stationsById>;
  #landing: Pin[] = [];

  constructor(board: BoardDescription) {
    this.#board = boardLines(board);
    this.#stations = stationsById(board.stations);
    this.lines = new SimulatedLines(this.#board.lineCount, this.#board.codeCount);
  }

  plug(contactA: ContactId, contactB: ContactId): Hindrance {
    const [lineA, lineB] = [this.#lineOf(contactA), this.#lineOf(contactB)];
    if (lineA === undefined) return { code: "no-such-contact", facts: { contact: contactA } };
    if (lineB === undefined) return { code: "no-such-contact", facts: { contact: contactB } };
    if (lineA !== lineB) this.lines.join(lineA, lineB);
    return undefined;
  }

  /** Plugs a whole cable: its first core at once, the others and the code of the plug each 10 ms later. */
  plugCable(entryA: EntryId, entryB: EntryId, code: number | undefined, nowMs: number): Hindrance {
    for (const entry of [entryA, entryB])
      if (coreRolesOf(entry, this.#stations).length === 0) return { code: "no-such-entry", facts: { entry } };
    const coded = code === undefined ? undefined : this.#board.codes.get(code);
    if (code !== undefined && coded === undefined)
      return { code: "unknown-code", facts: { code: String(code) } };
    const cores = coreRolesOf(entryA, this.#stations);
    const pairs = straightCores(entryA, entryB, this.#stations).filter(
      ({ from }) =>
        coded === undefined ||
        cores.some(({ core, role }) => coded.cores.includes(core) && from === `${entryA}.${role}`),
    );
    const pins = [
      ...pairs.map(({ from, to }) => ({ lead: [from, to] as const })),
      ...(code === undefined ? [] : [{ code }]),
    ];
    pins.forEach((pin, index) =>
      this.#landing.push({ ...pin, atMs: nowMs + index * pinApartMs, entries: [entryA, entryB] }),
    );
    this.advance(nowMs);
    return undefined;
  }

  /** Pulls leads, all leads of an entry with its code, or everything; pins still on their way stay out. */
  pull(what: PullWhat): Hindrance {
    if (what === "all") {
      for (const line of Object.values(this.#board.probes ?? {})) this.#partAll(line);
      return this.setLeads(noLeads);
    }
    if ("entry" in what) {
      if (!this.#board.entries.some(({ entry }) => entry === what.entry))
        return { code: "no-such-entry", facts: { entry: what.entry } };
      const isIts = (contact: ContactId): boolean => entryOf(contact) === what.entry;
      return this.pull({ leads: this.leads.leads.filter((lead) => lead.some(isIts)) });
    }
    const nowhere = what.leads.flat().find((contact) => this.#lineOf(contact) === undefined);
    if (nowhere !== undefined) return { code: "no-such-contact", facts: { contact: nowhere } };
    const before = this.leads;
    for (const [from, to] of what.leads) {
      this.lines.part(this.#lineOf(from)!, this.#lineOf(to)!);
      this.#landing = this.#landing.filter((pin) => !("lead" in pin && isBetween(pin.lead, from, to)));
    }
    this.#takeCodes(before, what.leads);
    return undefined;
  }

  /** Makes these the leads and codes that are in. Probes stay where they are. */
  setLeads({ leads, codes }: BoardLeads): Hindrance {
    this.#landing = [];
    for (const [from, to] of this.leads.leads) this.lines.part(this.#lineOf(from)!, this.#lineOf(to)!);
    for (const { entry } of this.#board.entries) this.#strap(entry, 0);
    this.restore({ leads, codes });
    return undefined;
  }

  /** Puts a probe on a contact, on the other probe, or nowhere. */
  probe(probe: "red" | "black", at: ContactId | "other-probe" | null): Hindrance {
    const { probes } = this.#board;
    if (!probes) return { code: "no-such-contact", facts: { contact: `${probe} probe` } };
    const target = at === "other-probe" ? probes[probe === "red" ? "black" : "red"] : at && this.#lineOf(at);
    if (target === undefined) return { code: "no-such-contact", facts: { contact: String(at) } };
    this.#partAll(probes[probe]);
    if (target !== null) this.lines.join(probes[probe], target);
    return undefined;
  }

  setFault(contact: ContactId, fault: LineFault | null): Hindrance {
    const line = this.#lineOf(contact);
    if (line === undefined) return { code: "no-such-contact", facts: { contact } };
    this.lines.setFault(line, fault);
    return undefined;
  }

  /** Puts back the leads and codes that were in before. Contacts that the board does not have are passed over. */
  restore({ leads, codes }: BoardLeads): void {
    for (const [from, to] of leads) this.plug(from, to);
    for (const { entry, code } of codes) this.#strap(entry, code);
  }

  /** What hands have put in: pins still on their way included, probes left out. */
  get leads(): BoardLeads {
    const leads = new Map<string, [ContactId, ContactId]>();
    const codes = new Map<EntryId, number>(
      this.#board.entries.map(({ entry, codeContacts }) => [entry, this.#codeAt(codeContacts)]),
    );
    const note = (from: ContactId, to: ContactId): void => {
      const [first, second] = [from, to].sort(byId) as [ContactId, ContactId];
      leads.set(`${first} ${second}`, [first, second]);
    };
    for (const [contact, line] of this.#board.lineOf)
      for (const other of this.lines.joinedTo(line)) {
        const far = this.#board.contactOf.get(other);
        if (far !== undefined) note(contact, far);
      }
    for (const pin of this.#landing)
      if ("lead" in pin) note(...pin.lead);
      else for (const entry of pin.entries) codes.set(entry, pin.code);
    return {
      leads: [...leads.values()].sort(([a, b], [c, d]) => byId(a, c) || byId(b, d)),
      codes: [...codes].flatMap(([entry, code]) => (code === 0 ? [] : [{ entry, code }])),
    };
  }

  /** Lets pins make contact whose time has come; gives how many, and the time of the next one on its way. */
  advance(nowMs: number): { landedCount: number; nextMs: number } {
    const due = this.#landing.filter(({ atMs }) => atMs <= nowMs);
    this.#landing = this.#landing.filter(({ atMs }) => atMs > nowMs);
    for (const pin of due)
      if ("lead" in pin) this.plug(...pin.lead);
      else for (const entry of pin.entries) this.#strap(entry, pin.code);
    return { landedCount: due.length, nextMs: Math.min(...this.#landing.map(({ atMs }) => atMs)) };
  }

  #lineOf(contact: ContactId): LineIndex | undefined {
    return this.#board.lineOf.get(contact);
  }

  #partAll(line: LineIndex): void {
    for (const other of this.lines.joinedTo(line)) this.lines.part(line, other);
  }

  #strap(entry: EntryId, code: number): void {
    const { codeContacts = [] } = this.#board.entries.find((each) => each.entry === entry) ?? {};
    codeContacts.forEach((contact, bit) => this.lines.setCode(contact, ((code >> bit) & 1) === 1));
  }

  #codeAt(codeContacts: readonly number[]): number {
    return codeContacts.reduce(
      (code, contact, bit) => code | (this.lines.isStrapped(contact) ? 1 << bit : 0),
      0,
    );
  }

  /** The plugs of a coded cable take their code out with its last core, and any plug with the last of its entry. */
  #takeCodes(before: BoardLeads, pulled: BoardLeads["leads"]): void {
    const codeAt = new Map(before.codes.map(({ entry, code }) => [entry, code]));
    const farEnds = (leads: BoardLeads["leads"], entry: EntryId): EntryId[] =>
      leads.flatMap(([a, b]) =>
        entryOf(a) === entry ? [entryOf(b)] : entryOf(b) === entry ? [entryOf(a)] : [],
      );
    const { leads } = this.leads;
    for (const entry of new Set(pulled.flat().map(entryOf))) {
      const isOfItsCable = (far: EntryId): boolean => codeAt.get(far) === codeAt.get(entry);
      const left = farEnds(leads, entry);
      const isCableOut = farEnds(pulled, entry).some(isOfItsCable) && !left.some(isOfItsCable);
      if (left.length > 0 && !isCableOut) continue;
      this.#strap(entry, 0);
      this.#landing = this.#landing.filter((pin) => "lead" in pin || !pin.entries.includes(entry));
    }
  }
}

const isBetween = (lead: readonly ContactId[], from: ContactId, to: ContactId): boolean =>
  lead.includes(from) && lead.includes(to);
