import type { Timers } from "./clock.ts";

interface RepeatingParts {
  timers: Timers;
  /** Goes once; gives how many milliseconds to wait until the next. */
  go: () => Promise<number>;
  /** Told of a go that was rejected, unless it is over anyway. */
  failed: (error: Error) => void;
  /** The wait after the first failure; each after it is twice as long, up to the longest. */
  firstRetryMs: number;
  longestRetryMs: number;
}

/** Does something again and again, one go after the other, until it is stopped. */
export class Repeating {
  readonly #parts: RepeatingParts;
  #failedCount = 0;
  #cancel: (() => void) | undefined;
  #going: Promise<void> | undefined;
  #isStopped = false;

  constructor(parts: RepeatingParts) {
    this.#parts = parts;
  }

  get isStopped(): boolean {
    return this.#isStopped;
  }

  start(): void {
    this.#later(0);
  }

  /** Starts nothing more, and waits for the go that is on its way. */
  async stop(): Promise<void> {
    this.#isStopped = true;
    this.#cancel?.();
    await this.#going;
  }

  #later(delayMs: number): void {
    if (this.#isStopped) return;
    this.#cancel = this.#parts.timers.after(delayMs, () => {
      this.#going = this.#go();
    });
  }

  async #go(): Promise<void> {
    const { go, failed, firstRetryMs, longestRetryMs } = this.#parts;
    let waitMs: number;
    try {
      waitMs = await go();
      this.#failedCount = 0;
    } catch (error) {
      waitMs = Math.min(longestRetryMs, firstRetryMs * 2 ** this.#failedCount);
      this.#failedCount += 1;
      if (!this.#isStopped) failed(error as Error);
    }
    this.#later(waitMs);
  }
}
