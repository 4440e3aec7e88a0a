import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type ContactId, type EntryId, entryOf } from "../../shared/board/ids.ts";
import { placesOfEntry, stationsById, straightCores } from "../../shared/wiring/conductors-of.ts";
import { type BoardLines, boardLines } from "./board-lines.ts";
import type { LineIndex } from "./line-index.ts";
import type { FromScanner, ToScanner } from "../scan/scanner-messages.ts";
import { type LineFault, SimulatedLines } from "./simulated-lines.ts";

type Refused = Extract<FromScanner, { type: "refused" }>;
/** Why hands cannot do what they were asked, or undefined where they did. */
export type Refusal = Pick<Refused, "code" | "facts"> | undefined;
type PullWhat = Extract<ToScanner, { type: "pull" }>["what"];

/** The pins of a cable's plug make contact one after the other, as by hand. */
const pinApartMs = 30;

/** One more pin that makes contact at its time. */
interface Pin {
  atMs: number;
  entries: readonly EntryId[];
  land: () => void;
}

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

  plug(contactA: ContactId, contactB: ContactId): Refusal {
    const [lineA, lineB] = [this.#lineOf(contactA), this.#lineOf(contactB)];
    if (lineA === undefined) return { code: "no-such-contact", facts: { contact: contactA } };
    if (lineB === undefined) return { code: "no-such-contact", facts: { contact: contactB } };
    if (lineA !== lineB) this.lines.join(lineA, lineB);
    return undefined;
  }

  /** Plugs a whole cable: its first core at once, the others and the code of the plug each 30 ms later. */
  plugCable(entryA: EntryId, entryB: EntryId, code: number | undefined, nowMs: number): Refusal {
    for (const entry of [entryA, entryB])
      if (placesOfEntry(entry, this.#stations).length === 0)
        return { code: "no-such-entry", facts: { entry } };
    const coded = code === undefined ? undefined : this.#board.codes.get(code);
    if (code !== undefined && coded === undefined)
      return { code: "unknown-code", facts: { code: String(code) } };
    const cores = placesOfEntry(entryA, this.#stations);
    const pairs = straightCores(entryA, entryB, this.#stations).filter(
      ({ from }) =>
        coded === undefined ||
        cores.some(({ core, role }) => coded.cores.includes(core) && from === `${entryA}.${role}`),
    );
    const entries = [entryA, entryB];
    const landings: (() => void)[] = pairs.map(
      ({ from, to }) =>
        () =>
          void this.plug(from, to),
    );
    if (code !== undefined) landings.push(() => entries.forEach((entry) => this.#strap(entry, code)));
    landings.forEach((land, index) =>
      this.#landing.push({ atMs: nowMs + index * pinApartMs, entries, land }),
    );
    this.advance(nowMs);
    return undefined;
  }

  /** Pulls one lead, all leads of an entry with its code, or everything; pins still on their way stay out. */
  pull(what: PullWhat): Refusal {
    if (what === "all") {
      this.#landing = [];
      for (const { entry } of this.#board.entries) this.#pullEntry(entry);
      for (const line of this.#board.lineOf.values()) this.#partAll(line);
      return undefined;
    }
    if ("entry" in what) {
      if (!this.#board.entries.some(({ entry }) => entry === what.entry))
        return { code: "no-such-entry", facts: { entry: what.entry } };
      this.#landing = this.#landing.filter(({ entries }) => !entries.includes(what.entry));
      this.#pullEntry(what.entry);
      return undefined;
    }
    const [lineA, lineB] = [this.#lineOf(what.contactA), this.#lineOf(what.contactB)];
    if (lineA === undefined) return { code: "no-such-contact", facts: { contact: what.contactA } };
    if (lineB === undefined) return { code: "no-such-contact", facts: { contact: what.contactB } };
    this.lines.part(lineA, lineB);
    this.#takeCodes([entryOf(what.contactA), entryOf(what.contactB)]);
    return undefined;
  }

  /** Puts a probe on a contact, on the other probe, or nowhere. */
  probe(probe: "red" | "black", at: ContactId | "other-probe" | null): Refusal {
    const { probes } = this.#board;
    if (!probes) return { code: "no-such-contact", facts: { contact: `${probe} probe` } };
    const target = at === "other-probe" ? probes[probe === "red" ? "black" : "red"] : at && this.#lineOf(at);
    if (target === undefined) return { code: "no-such-contact", facts: { contact: String(at) } };
    this.#partAll(probes[probe]);
    if (target !== null) this.lines.join(probes[probe], target);
    return undefined;
  }

  setFault(contact: ContactId, fault: LineFault | null): Refusal {
    const line = this.#lineOf(contact);
    if (line === undefined) return { code: "no-such-contact", facts: { contact } };
    this.lines.setFault(line, fault);
    return undefined;
  }

  /** Puts back the leads and codes that were in before. Contacts that the board does not have are passed over. */
  restore(groups: readonly ContactId[][], codes: readonly { entry: EntryId; code: number }[]): void {
    for (const [first, ...others] of groups)
      for (const other of others) if (first !== undefined) this.plug(first, other);
    for (const { entry, code } of codes) this.#strap(entry, code);
  }

  /** True where a lead is in; probes are no leads. */
  get hasLeads(): boolean {
    return [...this.#board.lineOf.values()].some((line) =>
      this.lines.joinedTo(line).some((other) => this.#board.contactOf.has(other)),
    );
  }

  /** Lets pins make contact whose time has come; gives the time of the next one, if any is on its way. */
  advance(nowMs: number): number | undefined {
    const due = this.#landing.filter(({ atMs }) => atMs <= nowMs);
    this.#landing = this.#landing.filter(({ atMs }) => atMs > nowMs);
    for (const { land } of due) land();
    return this.#landing.length === 0 ? undefined : Math.min(...this.#landing.map(({ atMs }) => atMs));
  }

  #lineOf(contact: ContactId): LineIndex | undefined {
    return this.#board.lineOf.get(contact);
  }

  #partAll(line: LineIndex): void {
    for (const other of this.lines.joinedTo(line)) this.lines.part(line, other);
  }

  #pullEntry(entry: EntryId): void {
    const { contactOf, lineOf } = this.#board;
    const touched = new Set<EntryId>([entry]);
    for (const contact of this.#board.entries.find((each) => each.entry === entry)?.contacts ?? []) {
      const line = lineOf.get(contact)!;
      for (const other of this.lines.joinedTo(line)) {
        const far = contactOf.get(other);
        // A probe that touches it is not plugged in it.
        if (far === undefined) continue;
        this.lines.part(line, other);
        touched.add(entryOf(far));
      }
    }
    this.#takeCodes([...touched]);
  }

  #strap(entry: EntryId, code: number): void {
    const { codeContacts = [] } = this.#board.entries.find((each) => each.entry === entry) ?? {};
    codeContacts.forEach((contact, bit) => this.lines.setCode(contact, ((code >> bit) & 1) === 1));
  }

  /** A plug takes its code out with its last core. */
  #takeCodes(entries: readonly EntryId[]): void {
    for (const entry of entries) {
      const contacts = this.#board.entries.find((each) => each.entry === entry)?.contacts ?? [];
      const isEmpty = contacts.every((contact) =>
        this.lines.joinedTo(this.#lineOf(contact)!).every((other) => !this.#board.contactOf.has(other)),
      );
      if (isEmpty) this.#strap(entry, 0);
    }
  }
}
