/** Lets a burst through and then so many a second; each socket has one of its own. */
export class RateBucket {
  readonly #burst: number;
  readonly #perSecond: number;
  readonly #nowMs: () => number;
  #left: number;
  #filledMs: number;

  constructor(burst: number, perSecond: number, nowMs: () => number) {
    this.#burst = burst;
    this.#perSecond = perSecond;
    this.#nowMs = nowMs;
    this.#left = burst;
    this.#filledMs = nowMs();
  }

  /** True where one more is let through, or so many together. */
  take(count = 1): boolean {
    const nowMs = this.#nowMs();
    this.#left = Math.min(this.#burst, this.#left + ((nowMs - this.#filledMs) / 1000) * this.#perSecond);
    this.#filledMs = nowMs;
    if (this.#left < count) return false;
    this.#left -= count;
    return true;
  }
}
