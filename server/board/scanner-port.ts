import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { ContactId, EntryId } from "../../shared/board/ids.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { Refusal } from "../refusal.ts";

/** What the server may ask of the board while it runs. All but the self-check are for the simulated board. */
export type BoardRequest =
  | { type: "plug"; contactA: ContactId; contactB: ContactId }
  | { type: "plug-cable"; entryA: EntryId; entryB: EntryId; code?: number }
  | { type: "pull"; what: { contactA: ContactId; contactB: ContactId } | { entry: EntryId } | "all" }
  | { type: "probe"; probe: "red" | "black"; at: ContactId | "other-probe" | null }
  | { type: "self-check" };

/** What the board tells of itself. */
export interface BoardListener {
  opened(info: { hasCodes: boolean; hasProbes: boolean }): void;
  /** It cannot be opened, or its scanner stopped; it is tried again by itself. */
  lost(why: { code: string; facts: Record<string, string | number> }): void;
  sensed(state: SensedState): void;
  selfCheckProgress(doneCount: number, totalCount: number): void;
  selfCheckResult(faults: BoardFault[]): void;
}

/** What is opened: the board, and the leads that are in where it is simulated. */
export interface BoardOpening {
  board: BoardDescription;
  groups?: ContactId[][];
  codes?: { entry: EntryId; code: number }[];
}

/** The board as the bench knows it, whichever process senses it. */
export interface BoardPort {
  /** Opens the board and keeps it open; `opening` is asked again each time, for leads that are in by then. */
  open(opening: () => BoardOpening, listener: BoardListener): void;
  /** Done once the board has taken it, or refused. */
  request(request: BoardRequest): Promise<{ ok: true } | Refusal>;
  close(): Promise<void>;
}
