import type { LineReading, Lines } from "./lines.ts";

/**
 * A simulated board that takes its time as a chain on GPIO pins does: it counts the calls that an exchange of a
 * chain makes (load, clock, data when it changes, one read a bit, latch) and spins that long. For speed runs.
 */
export class SpinningLines implements Lines {
  readonly lineCount: number;
  readonly codeCount: number;
  /** GPIO calls a chain would have made so far. */
  callCount = 0;
  #dataLevel = 1;
  #isPulling = false;

  constructor(
    readonly inner: Lines,
    readonly spinUs: number,
    readonly nowMs: () => number,
  ) {
    this.lineCount = inner.lineCount;
    this.codeCount = inner.codeCount;
  }

  exchange(next: Uint8Array): LineReading {
    const startMs = this.nowMs();
    const calls = this.#callsOf(next);
    this.callCount += calls;
    const reading = this.inner.exchange(next);
    while (this.nowMs() - startMs < (calls * this.spinUs) / 1000);
    return reading;
  }

  close(): void {
    this.inner.close();
  }

  #callsOf(next: Uint8Array): number {
    const lineBits = 8 * Math.ceil(this.lineCount / 8);
    const codeBits = this.#isPulling ? 0 : 8 * Math.ceil(this.codeCount / 8);
    const shifted = Math.max(lineBits, codeBits);
    const loadAndLatch = 4;
    let calls = loadAndLatch + this.lineCount + (codeBits > 0 ? this.codeCount : 0) + 2 * shifted;
    for (let bit = shifted - 1; bit >= 0; bit -= 1) {
      const level = next[bit] === 1 ? 0 : 1;
      if (level !== this.#dataLevel) calls += 1;
      this.#dataLevel = level;
    }
    this.#isPulling = next.includes(1);
    return calls;
  }
}
