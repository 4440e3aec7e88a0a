/** So many of the last are looked at. */
const mostKept = 200;

/** How long the disk took for what was put on it last, in milliseconds. */
export class CommitTimes {
  readonly #tookMs: number[] = [];

  took(ms: number): void {
    this.#tookMs.push(ms);
    if (this.#tookMs.length > mostKept) this.#tookMs.shift();
  }

  /** Null before the first. */
  get summary(): { medianMs: number; worstMs: number; count: number } | null {
    const sorted = [...this.#tookMs].sort((a, b) => a - b);
    const medianMs = sorted[Math.floor(sorted.length / 2)];
    const worstMs = sorted.at(-1);
    return medianMs === undefined || worstMs === undefined
      ? null
      : { medianMs, worstMs, count: sorted.length };
  }
}
