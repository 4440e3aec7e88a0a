import type { ClockState } from "../../shared/protocol/log-row.ts";

/** Time, as everything in the server is given it. */
export interface Clock {
  /** Milliseconds that only ever count up, from any start. */
  monotonicMs(): number;
  /** Milliseconds since 1970, as far as the machine knows. */
  wallMs(): number;
  /** How far `wallMs` can be trusted. */
  state(): ClockState;
}

/** Runs something once, later. */
export interface Timers {
  /** Returns what cancels it. A cancelled or done one is cancelled again without harm. */
  after(delayMs: number, run: () => void): () => void;
}
