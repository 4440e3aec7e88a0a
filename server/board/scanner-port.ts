import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { BoardLeads } from "../../shared/board/board-leads.ts";
import type { ContactId, EntryId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

/** What the server may ask of the board while it runs. Those that move something are for the simulated board. */
export type BoardRequest =
  | { type: "plug"; contactA: ContactId; contactB: ContactId }
  | { type: "plug-cable"; entryA: EntryId; entryB: EntryId; code?: number }
  | { type: "pull"; what: { leads: BoardLeads["leads"] } | "all" }
  /** Makes these the leads that are in, and no others. */
  | { type: "set-leads"; to: BoardLeads }
  | { type: "probe"; probe: "red" | "black"; at: ContactId | "other-probe" | null }
  /** With `areLeadsOut` what still reads as joined is no lead: somebody who looked says so. */
  | { type: "self-check"; areLeadsOut?: boolean }
  | { type: "walk-test"; on: boolean }
  /** Answered by `leadResult` once the board is at rest. */
  | { type: "test-lead"; entryA: EntryId; entryB: EntryId };

/** What a lead between two entries shows: the contacts it joins, those it leaves open, the code at each end. */
export interface LeadResult {
  entryA: EntryId;
  entryB: EntryId;
  joined: [ContactId, ContactId][];
  open: ContactId[];
  codes: { entry: EntryId; code: number }[];
}

/** What the board tells of itself. */
export interface BoardListener {
  /** It is open; `leads` are in, none on a real board. Its states count from 1 again. */
  opened(info: { hasCodes: boolean; hasProbes: boolean; leads: BoardLeads }): void;
  /** It cannot be opened, or its scanner stopped; it is tried again by itself. */
  lost(why: { code: string; facts: Record<string, string | number> }): void;
  sensed(state: SensedState): void;
  /** Hands did something on the simulated board: what is in now. No state before `sensedRevision` can show it. */
  moved(moved: { leads: BoardLeads; sensedRevision: number }): void;
  selfCheckProgress(doneCount: number, totalCount: number): void;
  selfCheckResult(faults: BoardFault[]): void;
  /** A probe has come to a contact or test face; `leftCount` have not been touched yet. */
  walkTestTouch(contact: ContactId, leftCount: number): void;
  leadResult(result: LeadResult): void;
}

/** What is opened: the board, and what is in where it is simulated. */
export interface BoardOpening {
  board: BoardDescription;
  leads?: BoardLeads;
}

/** The board as the bench knows it, whichever process senses it. */
export interface BoardPort {
  /** Opens the board and keeps it open; `opening` is asked again each time, for leads that are in by then. */
  open(opening: () => BoardOpening, listener: BoardListener): void;
  /** Done once the board has taken it, or refused. */
  request(request: BoardRequest): Promise<{ ok: true } | Refusal>;
  /** Somebody is at the bench: what comes to be joined from now on may be a lead. */
  attended(): void;
  close(): Promise<void>;
}
