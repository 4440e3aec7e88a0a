import type { ClockState } from "../../shared/protocol/log-row.ts";
import type { Clock, Timers } from "../../server/clock/clock.ts";

/** Time that goes by only when a check says so. */
export class ManualClock implements Clock, Timers {
  #nowMs = 1000;
  #wallMs = 1_750_000_000_000;
  clockState: ClockState = "synced";
  #waiting: { atMs: number; run: () => void }[] = [];

  monotonicMs(): number {
    return this.#nowMs;
  }

  wallMs(): number {
    return this.#wallMs;
  }

  state(): ClockState {
    return this.clockState;
  }

  after(delayMs: number, run: () => void): () => void {
    const timer = { atMs: this.#nowMs + delayMs, run };
    this.#waiting.push(timer);
    return () => {
      this.#waiting = this.#waiting.filter((one) => one !== timer);
    };
  }

  /** How many timers wait: an idle bench should have none that fires for ever. */
  get waitingCount(): number {
    return this.#waiting.length;
  }

  /** Somebody sets the wall clock. */
  setWall(wallMs: number): void {
    this.#wallMs = wallMs;
  }

  /** Lets time go by, and runs what falls due on the way, in its order. */
  advance(byMs: number): void {
    const endMs = this.#nowMs + byMs;
    for (;;) {
      const due = this.#waiting.filter(({ atMs }) => atMs <= endMs).sort((a, b) => a.atMs - b.atMs)[0];
      if (!due) break;
      this.#waiting = this.#waiting.filter((one) => one !== due);
      this.#wallMs += Math.max(0, due.atMs - this.#nowMs);
      this.#nowMs = Math.max(this.#nowMs, due.atMs);
      due.run();
    }
    this.#wallMs += endMs - this.#nowMs;
    this.#nowMs = endMs;
  }
}
