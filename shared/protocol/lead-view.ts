import type { BoardFaultKind } from "../board/sensed-state.schema.ts";
import type { Text } from "../text/text.schema.ts";
import type { Mode, Step } from "./attempt-words.ts";
import type { AttemptView, BoardFace } from "./bench-view.ts";
import type { ClockState } from "./log-row.ts";

/** Where the lead's page finds what it shows: a stream of events of a server (HTML, server-sent events). */
export const leadData = "/lead-data";

/** How a bench is, as it tells its lead. Times are by its own clock, which `nowWallMs` read when this was told. */
export interface BenchReport {
  benchName: string;
  nowWallMs: number;
  state: "starting" | "no-board" | "ready";
  clock: ClockState;
  /** What is wrong with its board, and with its records. */
  faults: BoardFaultKind[];
  records: "sound" | "damaged" | "disk-full" | "disk-read-only";
  /** Who is signed in; empty for a guest, null where nobody is. */
  person: string | null;
  isFrozen: boolean;
  /** When its time is up; null where none is set or it stands still. */
  timeUpWallMs: number | null;
  /** What is left while it stands still; null where none is set or it runs. */
  heldTimeMs: number | null;
  work: {
    attempt: string;
    learner: string;
    title: Text;
    mode: Mode;
    step: Step;
    startedWallMs: number;
    /** Since when they wait for a check; null while they do not. */
    readyWallMs: number | null;
    isWaitingForTrainer: boolean;
  } | null;
  /** The plan as it is sensed, without what is said of it. */
  picture: AttemptView | null;
  face: BoardFace;
  /** The pack that is in force there; 0 where none is. */
  packVersion: number;
  /** One that came and waits for the end of the work. */
  waitingPackVersion: number | null;
}

/** A bench on the page of its lead. */
export interface LedBench {
  id: string;
  name: string;
  /** False: nothing is heard from it; the report is the last one. */
  isLinked: boolean;
  /** Undefined before the first since the start of the lead. */
  report?: BenchReport;
  /** What its clock is behind the lead's. */
  clockBehindMs: number;
  /** What it was last told and would not do: the code of why. */
  refused?: string;
}

/** All that the page of a lead shows. */
export interface LeadView {
  isLeading: boolean;
  /** What this bench is called on the network. */
  name: string;
  /** Where benches that do not find it by name are pointed to. */
  addresses: string[];
  nowWallMs: number;
  /** The pairing code, and when it ends, while one is shown. */
  code?: { text: string; endsWallMs: number };
  isFrozen: boolean;
  /** The bench whose picture the projector shows. */
  projected: string | null;
  benches: LedBench[];
  /** The last pack that went out. */
  pack: {
    version: number;
    madeWallMs: number;
    learnerCount: number;
    taskCount: number;
    /** Who sent it; empty where they are not on the list any more. */
    sentBy: string;
  } | null;
  /** Who leads this bench itself. */
  led: { name: string; address: string; isLinked: boolean } | null;
}

/** A lead that was found by its name on the network. */
export interface FoundLead {
  name: string;
  address: string;
}
