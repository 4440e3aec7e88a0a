import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { BoardLeads } from "../../shared/board/board-leads.ts";
import type { ContactId, EntryId } from "../../shared/board/ids.ts";
import type { PinsThrough } from "../lines/open-pins.ts";
import type { BoardFault, SensedState } from "../../shared/board/sensed-state.schema.ts";

/** How the scanner child reaches the board. `spinning` is the simulated chain that spins a while a GPIO call. */
export type LinesKind = "simulated" | "gpio" | "spinning";

/** Something broken at a contact of the simulated board. */
export interface SimulatedFault {
  contact: ContactId;
  fault: "stuck-low" | "stuck-high" | "dead-output" | "dead-input" | "loose-contact";
}

/** From the server to the scanner child. */
export type ToScanner =
  | {
      type: "open";
      board: BoardDescription;
      lines: LinesKind;
      /** Only for `spinning`. */
      spinUs?: number;
      /** Only for `simulated` and `spinning`: what was in when the bench stopped. */
      leads?: BoardLeads;
      /** Only for `simulated` and `spinning`: what is broken on the board from the start. */
      faults?: SimulatedFault[];
    }
  | { type: "plug"; request: number; contactA: ContactId; contactB: ContactId }
  | { type: "plug-cable"; request: number; entryA: EntryId; entryB: EntryId; code?: number }
  /** Pulls these leads, or every lead of an entry, or all; the plugs of a coded cable take their code along. */
  | {
      type: "pull";
      request: number;
      what: { leads: [ContactId, ContactId][] } | { entry: EntryId } | "all";
    }
  /** Makes these the leads and codes that are in, and no others. */
  | { type: "set-leads"; request: number; to: BoardLeads }
  /** Puts a simulated probe somewhere. */
  | { type: "probe"; request: number; probe: "red" | "black"; at: ContactId | "other-probe" | null }
  | {
      type: "set-fault";
      request: number;
      contact: ContactId;
      fault: SimulatedFault["fault"] | null;
    }
  /** With `areLeadsOut` what still reads as joined is no lead: somebody who looked says so. */
  | { type: "self-check"; request: number; areLeadsOut?: boolean }
  /** Somebody is at the bench. */
  | { type: "attended" }
  | { type: "walk-test"; request: number; on: boolean }
  | { type: "test-lead"; request: number; entryA: EntryId; entryB: EntryId }
  | { type: "close" };

/** From the scanner child to the server. Requests are answered by `done` or `refused` with their number. */
export type FromScanner =
  | {
      type: "opened";
      lines: LinesKind;
      /** Which of the kernel's interfaces a real board is read through. */
      through?: PinsThrough;
      lineCount: number;
      hasCodes: boolean;
      hasProbes: boolean;
      /** What is in; none on a real board, where only sensing tells. */
      leads: BoardLeads;
    }
  | { type: "open-failed"; code: string; facts: Record<string, string | number> }
  | { type: "sensed"; state: SensedState }
  | { type: "self-check-progress"; request: number; doneCount: number; totalCount: number }
  | { type: "self-check-result"; request: number; faults: BoardFault[] }
  | { type: "walk-test-touch"; contact: ContactId; firstTime: boolean; leftCount: number }
  | {
      type: "lead-result";
      request: number;
      /** Pairs of contacts of the two entries found joined, and the code read at each. */
      joined: [ContactId, ContactId][];
      open: ContactId[];
      codes: { entry: EntryId; code: number }[];
    }
  | {
      type: "done";
      request: number;
      /** What is in now that it is done, and the first sensed state that can show it. */
      moved?: { leads: BoardLeads; sensedRevision: number };
    }
  | {
      type: "refused";
      request: number;
      code: "not-on-a-real-board" | "no-such-contact" | "no-such-entry" | "unknown-code" | "board-not-empty";
      facts: Record<string, string>;
    }
  /** Sent once a second while the scan loop turns; feeds the watchdog. */
  | { type: "alive"; patternCount: number; monotonicMs: number };
