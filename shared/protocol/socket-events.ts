import type { ViewChange } from "./view-change.ts";
import type { BenchView } from "./bench-view.ts";
import type { ActMessage, ActName } from "./acts.ts";
import type { Reply } from "./reply.ts";

/** Where a bench screen finds its views; each audience has a namespace of its own. */
export const benchNamespace = "/bench";

/** From the server to a bench screen: a whole view on connect, and after that what changes in it. */
export interface ToBench {
  view: (view: BenchView) => void;
  change: (change: ViewChange) => void;
}

/** From a bench screen to the server: one event an act, each answered. */
export type FromBench = {
  [Name in ActName]: (message: ActMessage<Name>, answer: (answer: Reply) => void) => void;
};

/** What the health address answers. */
export interface Health {
  isReady: boolean;
  lines: "simulated" | "gpio" | "spinning";
  /** Whether the GPIO library could be installed on this machine. */
  hasGpioLibrary: boolean;
  board: { id: string; state: "starting" | "no-board" | "ready"; problem?: string };
  /** `doneCount`: how many records have been proved so far. */
  log: {
    state: "checking" | "sound" | "damaged";
    doneCount?: number;
    firstBadRecord?: string;
    eventCount: number;
  };
  /** The last nightly back-up; left out before the first, and where no folder was chosen for them. */
  backUp?:
    | { state: "making"; doneCount: number }
    | { state: "made"; wallMs: number }
    | { state: "failed"; problem: string }
    | undefined;
  /** How far the log is at the centre, and why no more of it goes there; left out where there is no centre. */
  centre?: { sent: { boot: number; sequence: number } | null; trouble?: { why: string } } | undefined;
  clock: "synced" | "battery" | "unsynced";
  softwareVersion: string;
  rulePackVersion: string;
}
