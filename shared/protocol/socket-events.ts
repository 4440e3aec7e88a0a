import type { ViewChange } from "./view-change.ts";
import type { BenchView, Fact } from "./bench-view.ts";
import type { ActMessage, ActName } from "./acts.ts";

/** The answer to an act: done, or refused with a code of the kiosk's catalogue and what goes in its gaps. */
export type Answer = { ok: true } | { ok: false; code: string; facts: Record<string, Fact> };

/** Where a bench screen finds its views; each audience has a namespace of its own. */
export const benchNamespace = "/bench";

/** From the server to a bench screen: a whole view on connect, and after that what changes in it. */
export interface ToBench {
  view: (view: BenchView) => void;
  change: (change: ViewChange) => void;
}

/** From a bench screen to the server: one event an act, each answered. */
export type FromBench = {
  [Name in ActName]: (message: ActMessage<Name>, answer: (answer: Answer) => void) => void;
};

/** What the health address answers. */
export interface Health {
  isReady: boolean;
  lines: "simulated" | "gpio" | "spinning";
  /** Whether the GPIO library could be installed on this machine. */
  hasGpioLibrary: boolean;
  board: { id: string; state: "starting" | "no-board" | "ready"; problem?: string };
  log: { state: "checking" | "sound" | "damaged"; firstBadRecord?: string; eventCount: number };
  clock: "synced" | "battery" | "unsynced";
  softwareVersion: string;
  rulePackVersion: string;
}
