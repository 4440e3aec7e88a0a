import type { Clock, Timers } from "../clock/clock.ts";

const minuteMs = 60_000;

interface HoldParts {
  clock: Clock;
  timers: Timers;
  /** Called when another minute has gone by. */
  changed: () => void;
}

/**
 * What the trainer of a group holds a bench to: whether it is frozen, and how much time is left. It is no state of the
 * work: nothing ends by itself when the time is up, and a start of the bench begins without either.
 */
export class Hold {
  readonly #parts: HoldParts;
  #isFrozen = false;
  /** What was left when the clock last began or stopped. */
  #leftMs: number | undefined;
  #runsSinceMs = 0;
  #cancel: (() => void) | undefined;

  constructor(parts: HoldParts) {
    this.#parts = parts;
  }

  get isFrozen(): boolean {
    return this.#isFrozen;
  }

  /** The time that is left, below 0 once it is up; undefined where none was set. It stands still while the bench is frozen. */
  get leftMs(): number | undefined {
    if (this.#leftMs === undefined || this.#isFrozen) return this.#leftMs;
    return this.#leftMs - (this.#parts.clock.monotonicMs() - this.#runsSinceMs);
  }

  freeze(): void {
    this.#leftMs = this.leftMs;
    this.#isFrozen = true;
    this.#tick();
  }

  thaw(): void {
    this.#isFrozen = false;
    this.#runsSinceMs = this.#parts.clock.monotonicMs();
    this.#tick();
  }

  /** So much time from now on; undefined: no time is set any more. */
  setLeft(leftMs: number | undefined): void {
    this.#leftMs = leftMs;
    this.#runsSinceMs = this.#parts.clock.monotonicMs();
    this.#tick();
  }

  stop(): void {
    this.#cancel?.();
    this.#cancel = undefined;
  }

  /** Wakes with each whole minute that is left, the last time when it is up. */
  #tick(): void {
    this.stop();
    const { leftMs } = this;
    if (leftMs === undefined || leftMs <= 0 || this.#isFrozen) return;
    this.#cancel = this.#parts.timers.after(leftMs % minuteMs || minuteMs, () => {
      this.#parts.changed();
      this.#tick();
    });
  }
}
