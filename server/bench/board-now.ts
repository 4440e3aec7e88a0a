import { type BoardLeads, noLeads } from "../../shared/board/board-leads.ts";
import type { ContactId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { LeadResult } from "../board/scanner-port.ts";

/** Why there is no board: a code, and what it is about. */
export interface NoBoard {
  code: string;
  facts: Record<string, string | number>;
}

export type BoardStatus =
  | { state: "starting" }
  | ({ state: "no-board" } & NoBoard)
  | { state: "ready"; hasCodes: boolean; hasProbes: boolean };

export interface SelfCheckProgress {
  doneCount: number;
  totalCount: number;
  isDone: boolean;
}

/** How a self-check ended, and when. */
export interface LastSelfCheck {
  faultCount: number;
  wallMs: number;
}

/** A walk along the board with a probe: what it has touched, the last at the end. */
export interface Walk {
  isOn: boolean;
  touched: readonly ContactId[];
  leftCount: number;
}

/** The board as it is now: what it senses, what is plugged on a simulated one, what the tools for its health found. */
export class BoardNow {
  /** With how the last self-check of this board ended, where one is known of before the start. */
  constructor(lastSelfCheck?: LastSelfCheck) {
    this.#lastSelfCheck = lastSelfCheck;
  }

  #status: BoardStatus = { state: "starting" };
  #sensed: SensedState | undefined;
  #leads: BoardLeads = noLeads;
  /** States before this one cannot show what hands did last; none can until an opened board has been sensed. */
  #firstTrueRevision = Infinity;
  #wasOpen = false;
  #selfCheck: SelfCheckProgress | undefined;
  #selfCheckBegun: () => void = () => undefined;
  #found: readonly BoardFault[] = [];
  #lastSelfCheck: LastSelfCheck | undefined;
  #walk: Walk | undefined;
  #lead: (LeadResult & { sensed: string }) | undefined;

  get status(): BoardStatus {
    return this.#status;
  }

  /** How it stands for whoever asks: a board that was opened and not sensed yet is still starting. */
  get state(): BoardStatus["state"] {
    return this.#status.state === "ready" && !this.#sensed ? "starting" : this.#status.state;
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

  get wasOpen(): boolean {
    return this.#wasOpen;
  }

  /** What is in on the simulated board, by its own word; nothing on a real one. */
  get leads(): BoardLeads {
    return this.#leads;
  }

  /** True where the board is at rest: no plug may be half in. */
  get isSettled(): boolean {
    return this.#sensed?.isSettled === true && this.#sensed.revision >= this.#firstTrueRevision;
  }

  get selfCheck(): SelfCheckProgress | undefined {
    return this.#selfCheck;
  }

  /** How the last self-check ended, and when; undefined before the first. */
  get lastSelfCheck(): LastSelfCheck | undefined {
    return this.#lastSelfCheck;
  }

  /** What the last self-check found. */
  get selfCheckFaults(): readonly BoardFault[] {
    return this.#found;
  }

  get walk(): Walk | undefined {
    return this.#walk;
  }

  /** What a lead between two entries shows, and what was sensed then. */
  get lead(): (LeadResult & { sensed: string }) | undefined {
    return this.#lead;
  }

  open({ hasCodes, hasProbes, leads }: { hasCodes: boolean; hasProbes: boolean; leads: BoardLeads }): void {
    this.#status = { state: "ready", hasCodes, hasProbes };
    this.#leads = leads;
    this.#wasOpen = true;
    this.#firstTrueRevision = Infinity;
  }

  lose(why: NoBoard): void {
    this.#status = { state: "no-board", ...why };
  }

  sense(state: SensedState): void {
    this.#sensed = state;
    if (this.#firstTrueRevision === Infinity) this.#firstTrueRevision = 0;
  }

  /** Hands did something on the simulated board; until `sensedRevision` it is not at rest. */
  move({ leads, sensedRevision }: { leads: BoardLeads; sensedRevision: number }): void {
    this.#leads = leads;
    this.#firstTrueRevision = sensedRevision;
  }

  /** Begins a self-check, and calls back once its first line is checked. */
  startSelfCheck(begun: () => void): void {
    this.#selfCheck = { doneCount: 0, totalCount: 0, isDone: false };
    this.#selfCheckBegun = begun;
  }

  selfCheckAt(doneCount: number, totalCount: number): void {
    this.#selfCheck = { doneCount, totalCount, isDone: false };
    this.#found = [];
    this.#selfCheckBegun();
  }

  endSelfCheck(found: readonly BoardFault[], wallMs: number): void {
    this.#lastSelfCheck = { faultCount: found.length, wallMs };
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
  endHealthTools(): void {
    if (this.#selfCheck?.isDone) this.#selfCheck = undefined;
    this.#found = [];
    this.#walk = undefined;
    this.#lead = undefined;
  }
}
