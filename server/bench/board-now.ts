import type { ContactId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { LeadResult } from "../board/scanner-port.ts";
import type { Leads } from "../board/simulated-leads.ts";
import type { Timers } from "../clock/clock.ts";

export type BoardStatus =
  | { state: "starting" }
  | { state: "no-board"; code: string; facts: Record<string, string | number> }
  | { state: "ready"; hasCodes: boolean; hasProbes: boolean };

export interface SelfCheck {
  doneCount: number;
  totalCount: number;
  isDone: boolean;
}

/** A walk along the board with a probe: what it has touched, the last at the end. */
export interface Walk {
  isOn: boolean;
  touched: readonly ContactId[];
  leftCount: number;
}

/** By then the scanner has sensed a simulated lead that was moved. */
const noticedMs = 120;

/** The board as it is now: what it senses, what is plugged on a simulated one, what the tools for its health found. */
export class BoardNow {
  readonly #timers: Timers;
  readonly #cameToRest: () => void;
  #status: BoardStatus = { state: "starting" };
  #sensed: SensedState | undefined;
  #leads: Leads = new Map();
  /** A simulated lead was moved so lately that the scanner may not have said so yet. */
  #isMoving = false;
  #cancelMoving: () => void = () => undefined;
  #selfCheck: SelfCheck | undefined;
  #selfCheckBegun: () => void = () => undefined;
  #found: readonly BoardFault[] = [];
  #walk: Walk | undefined;
  #lead: (LeadResult & { sensed: string }) | undefined;

  /** `cameToRest` is called when a lead that was moved has come to rest. */
  constructor(timers: Timers, cameToRest: () => void) {
    this.#timers = timers;
    this.#cameToRest = cameToRest;
  }

  get status(): BoardStatus {
    return this.#status;
  }

  get isReady(): boolean {
    return this.#status.state === "ready";
  }

  get hasCodes(): boolean {
    return this.#status.state === "ready" && this.#status.hasCodes;
  }

  get hasProbes(): boolean {
    return this.#status.state === "ready" && this.#status.hasProbes;
  }

  get sensed(): SensedState | undefined {
    return this.#sensed;
  }

  /** The leads of a simulated board. */
  get leads(): Leads {
    return this.#leads;
  }

  /** True where the board is at rest: no plug may be half in. */
  get isSettled(): boolean {
    return this.#sensed?.isSettled === true && !this.#isMoving;
  }

  get selfCheck(): SelfCheck | undefined {
    return this.#selfCheck;
  }

  /** What the last self-check found. */
  get found(): readonly BoardFault[] {
    return this.#found;
  }

  get walk(): Walk | undefined {
    return this.#walk;
  }

  /** What a lead between two entries shows, and what was sensed then. */
  get lead(): (LeadResult & { sensed: string }) | undefined {
    return this.#lead;
  }

  open(info: { hasCodes: boolean; hasProbes: boolean }): void {
    this.#status = { state: "ready", ...info };
  }

  lose(why: { code: string; facts: Record<string, string | number> }): void {
    this.#status = { state: "no-board", ...why };
  }

  sense(state: SensedState): void {
    this.#sensed = state;
  }

  plug(leads: Leads): void {
    this.#leads = leads;
  }

  /** A simulated lead is moved. The scanner says so soon, and from then on says when the board is at rest. */
  startMoving(): void {
    this.#isMoving = true;
    this.#cancelMoving();
    this.#cancelMoving = this.#timers.after(noticedMs, () => {
      this.#isMoving = false;
      if (this.isSettled) this.#cameToRest();
    });
  }

  /** Begins a self-check, and calls back once its first line is checked. */
  startSelfCheck(begun: () => void): void {
    this.#selfCheck = { doneCount: 0, totalCount: 0, isDone: false };
    this.#found = [];
    this.#selfCheckBegun = begun;
  }

  selfCheckAt(doneCount: number, totalCount: number): void {
    this.#selfCheck = { doneCount, totalCount, isDone: false };
    this.#selfCheckBegun();
  }

  endSelfCheck(found: readonly BoardFault[]): void {
    const totalCount = this.#selfCheck?.totalCount ?? 0;
    this.#selfCheck = { doneCount: totalCount, totalCount, isDone: true };
    this.#found = found;
  }

  dropSelfCheck(): void {
    this.#selfCheck = undefined;
  }

  walkOn(walk: Walk): void {
    this.#walk = walk;
  }

  /** A probe has come to a contact: it stands last in the list. */
  touch(contact: ContactId, leftCount: number): void {
    if (!this.#walk?.isOn) return;
    const touched = [...this.#walk.touched.filter((one) => one !== contact), contact];
    this.#walk = { ...this.#walk, touched, leftCount };
  }

  showLead(lead: (LeadResult & { sensed: string }) | undefined): void {
    this.#lead = lead;
  }

  /** What was checked is over. A self-check that still goes on is not. */
  endChecks(): void {
    if (this.#selfCheck?.isDone) this.#selfCheck = undefined;
    this.#found = [];
    this.#walk = undefined;
    this.#lead = undefined;
  }
}
