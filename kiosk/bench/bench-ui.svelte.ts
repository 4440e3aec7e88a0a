import { getContext, setContext } from "svelte";
import {
  type CableId,
  type ContactId,
  type EntryId,
  type StationId,
  stationOf,
} from "../../shared/board/ids.ts";
import type { AttemptView, BenchView, Said } from "../../shared/protocol/bench-view.ts";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { Send } from "../link/send.ts";
import { type PlanHand, provideHand } from "../plan/plan-hand.ts";
import type { TradeWord } from "../text/trade-words.ts";
import { isTextKey } from "../text/is-text-key.ts";
import { type CableEnd, joinEnds } from "../wiring/join-ends.ts";

/** What is told about on the card beside the plan. */
export type Card =
  /** With `shownFor`, the id of a finding: opened to show its place, so the place stays in view. */
  | { what: "station"; id: StationId; shownFor?: string }
  | { what: "cable"; id: CableId; shownFor?: string }
  | { what: "contact"; id: ContactId }
  /** `isForHint`: opened for the hint that was asked for last. */
  | { what: "notes"; isForHint?: boolean }
  | { what: "finding"; id: string }
  | {
      what: "choose";
      from: CableEnd;
      to: CableEnd;
      which: "from" | "to";
      station: StationId;
      entries: EntryId[];
    };

/** What waits for its other end: a station, an entry or a contact. */
export type Armed =
  { kind: "station"; id: StationId } | { kind: "entry"; id: EntryId } | { kind: "contact"; id: ContactId };
export type Sheet =
  | "menu"
  | "task"
  | "tray"
  | "words"
  | "clear"
  | "leave"
  | "hand-in"
  | "as-found"
  | "health"
  | "staff"
  | "public";

/** What the server shows, and the work as it will be in a moment, with a cable that is being plugged. */
interface Seen {
  view: () => BenchView;
  foreseen?: () => AttemptView | undefined;
}

/**
 * What the person at the screen has in hand: which card is open, which end of a cable waits for the other. All
 * that is about the work itself is in the view that the server sends.
 */
export class BenchUi implements PlanHand {
  stage = $state<"plan" | "face">("plan");
  card = $state.raw<Card | null>(null);
  /** The card that opens as soon as the next screen stands. */
  cardOnNext: Card | null = null;
  armed = $state.raw<Armed | null>(null);
  /** Stations that stand open on the board face, the latest last; two at most. */
  opened = $state.raw<StationId[]>([]);
  /** The probe that is put down next. */
  probeInHand = $state<"red" | "black">("red");
  trayCsaMm2 = $state<number | undefined>();
  sheet = $state.raw<Sheet | null>(null);
  /** What of their own records a learner looks at where they choose a task. */
  ownRecords = $state<"progress" | "outcomes" | null>(null);
  /** The word that was touched: it stands first in the list of words. */
  wordAsked = $state.raw<TradeWord | null>(null);
  refusal = $state.raw<Said | null>(null);
  #beforeWords: Sheet | null = null;
  readonly #seen: Seen;
  #send: Send = async () => ({ ok: false, code: "link", facts: {} });

  /** What the server shows is asked for whenever it is looked at. */
  constructor(seen: Seen) {
    this.#seen = seen;
  }

  get view(): BenchView {
    return this.#seen.view();
  }

  get foreseen(): AttemptView | undefined {
    return this.#seen.foreseen?.();
  }

  sendBy(send: Send): void {
    this.#send = send;
  }

  /** Asks the server to do something; true when it did. A refusal stays on the screen until the next act. */
  async act<Name extends ActName>(name: Name, command: ActMessage<Name>): Promise<boolean> {
    this.refusal = null;
    const answer = await this.#send(name, command);
    if (answer.ok) return true;
    this.refuse(answer.code, answer.facts);
    return false;
  }

  refuse(code: string, facts: Said["facts"] = {}): void {
    const key = isTextKey(code) ? code : `refused.${code}`;
    this.refusal = isTextKey(key) ? { key, facts } : { key: "refused.other", facts: { ...facts, code } };
  }

  /** Opens the list of words at one of them; the sheet that it was touched in comes back when the list is closed. */
  explain(word: TradeWord): void {
    this.wordAsked = word;
    this.#beforeWords = this.sheet;
    this.sheet = "words";
  }

  closeSheet(): void {
    this.sheet = this.sheet === "words" ? this.#beforeWords : null;
    this.#beforeWords = null;
    this.wordAsked = null;
  }

  /** The station that what is in hand comes from. */
  get armedStation(): StationId | undefined {
    const { armed } = this;
    return armed?.kind === "station" ? armed.id : armed ? stationOf(armed.id) : undefined;
  }

  get isSimulated(): boolean {
    return this.view.board?.isSimulated ?? false;
  }

  /** True while leads may be moved on the screen. */
  get canWire(): boolean {
    const status = this.view.attempt?.status;
    return this.isSimulated && status === "open" && !this.isTesting && !this.view.attempt?.load;
  }

  /** True at the step Test, where a touch puts a probe down and moves no lead. */
  get isTesting(): boolean {
    return this.view.attempt?.test !== undefined;
  }

  /** Puts the probe in hand on a contact and takes up the other one. */
  async putProbe(at: ContactId): Promise<void> {
    const probe = this.probeInHand;
    if (await this.act("meter-act", { what: "probe", probe, at }))
      this.probeInHand = probe === "red" ? "black" : "red";
  }

  /** The size of the cable in hand: the one taken from the tray, else the one planned, else the first offered. */
  get csaInHandMm2(): number | undefined {
    const offered = this.view.attempt?.scenario.parts.cableCsaMm2 ?? [];
    if (this.trayCsaMm2 !== undefined && offered.includes(this.trayCsaMm2)) return this.trayCsaMm2;
    const plannedCsaMm2 = this.view.attempt?.plan.questions.find(
      ({ question }) => question === "csaMm2",
    )?.answer;
    return plannedCsaMm2 !== undefined && offered.includes(plannedCsaMm2) ? plannedCsaMm2 : offered[0];
  }

  /** Turns from the plan to the board's face and back; the face opens where the task is. */
  turnStage(): void {
    this.stage = this.stage === "plan" ? "face" : "plan";
    const about = this.armedStation ?? (this.card?.what === "station" ? this.card.id : undefined);
    this.card = null;
    if (this.stage === "face" && about) this.openStation(about);
  }

  closeCard(): void {
    this.card = null;
  }

  /** Puts away all that somebody had open, as when the bench is locked. */
  putAway(): void {
    this.sheet = null;
    this.ownRecords = null;
    this.stage = "plan";
    this.opened = [];
    this.trayCsaMm2 = undefined;
  }

  /** Puts down whatever is in hand, the innermost first. */
  escape(): void {
    if (this.armed) this.armed = null;
    else if (this.card) this.card = null;
    else if (this.opened.length > 0) this.opened = [];
  }

  arm(armed: Armed): void {
    this.refusal = null;
    this.card = null;
    this.armed = armed;
  }

  /**
   * A station was touched: one end of a cable, or the other. Touched again, or where no lead can be moved, it is told
   * about.
   */
  touchStation(id: StationId): void {
    const { armed } = this;
    if (armed?.kind === "entry") this.lay({ entry: armed.id }, { station: id });
    else if (armed?.kind === "station" && armed.id !== id) this.lay({ station: armed.id }, { station: id });
    else if (this.canWire && armed?.kind !== "station") this.arm({ kind: "station", id });
    else this.openCard(id);
  }

  /** Tells about a station. */
  openCard(id: StationId): void {
    this.armed = null;
    this.card = { what: "station", id };
  }

  /** Tells about a cable. */
  openCable(id: CableId): void {
    this.card = { what: "cable", id };
  }

  /** Says what a touch or a drag that met nothing did not do. */
  miss(what: "wire.missed" | "wire.drag-missed"): void {
    this.refuse(what);
  }

  /** An entry was touched: one end of a cable, or the other. */
  touchEntry(id: EntryId): void {
    if (!this.canWire) {
      if (!this.isSimulated) this.refuse("wire.real");
      return;
    }
    if (this.armed?.kind === "station") this.lay({ station: this.armed.id }, { entry: id });
    else if (this.armed?.kind !== "entry") this.arm({ kind: "entry", id });
    else if (this.armed.id === id) this.armed = null;
    else this.lay({ entry: this.armed.id }, { entry: id });
  }

  /** A contact was touched: one end of a lead, or the other, or something to tell about. */
  touchContact(id: ContactId, isFree: boolean): void {
    if (this.isTesting) {
      void this.putProbe(id);
      return;
    }
    if (this.armed?.kind === "contact" && this.canWire) {
      const from = this.armed.id;
      this.armed = null;
      if (from !== id) void this.act("plug", { contactA: from, contactB: id });
    } else if (isFree && this.canWire) this.arm({ kind: "contact", id });
    else this.card = { what: "contact", id };
  }

  /** Lays a lead from contact to contact, as at the end of a drag. */
  layLead(contactA: ContactId, contactB: ContactId): void {
    this.armed = null;
    if (contactA !== contactB && this.canWire) void this.act("plug", { contactA, contactB });
  }

  /** Lays a cable from one end to the other, and asks for an entry where it has to be chosen. */
  lay(from: CableEnd, to: CableEnd): void {
    const { board, attempt } = this.view;
    if (!board || !attempt || !this.canWire) return;
    const step = joinEnds(from, to, board, attempt);
    this.armed = null;
    switch (step.kind) {
      case "plug": {
        this.card = null;
        const csaMm2 = this.csaInHandMm2;
        void this.act("plug-cable", {
          entryA: step.entryA,
          entryB: step.entryB,
          ...(csaMm2 === undefined ? {} : { csaMm2 }),
        });
        return;
      }
      case "choose": {
        const which = "station" in from && from.station === step.station ? "from" : "to";
        this.card = { what: "choose", from, to, which, station: step.station, entries: step.entries };
        return;
      }
      case "full":
        this.refuse("wire.full", { station: step.station });
        return;
      case "same":
        this.refuse("wire.same", { where: step.entry });
    }
  }

  /** Opens a station to full size; with two open, the one opened first closes. */
  openStation(id: StationId): void {
    if (this.opened.includes(id)) return;
    this.opened = [...this.opened, id].slice(-2);
  }

  closeStation(id: StationId): void {
    this.opened = this.opened.filter((one) => one !== id);
  }
}

const ui = Symbol("bench-ui");
/** Provides it to every part of the screen, the plan of the house among them. */
export const provideUi = (made: BenchUi): BenchUi => {
  provideHand(made);
  return setContext(ui, made);
};
export const useUi = (): BenchUi => getContext<BenchUi>(ui);
