import type { LineIndex } from "../lines/line-index.ts";

const windowMs = 1_000;
const decodesAWindow = 5;
/** A loose contact is trusted again after this long without a misread. */
const trustedAfterMs = 2_000;

/**
 * Keeps count of how often each line's joins are decoded. A line that keeps changing is a loose contact: it gets
 * five decodes a second and no more, so that it never holds up the rest of the board.
 */
export class LooseLines {
  readonly #decodedMs = new Map<LineIndex, number[]>();
  readonly #misreadMs = new Map<LineIndex, number>();
  readonly #loose = new Set<LineIndex>();

  /** Lines that misread now, those that had their share of decodes included. */
  noteMisreads(lines: Iterable<LineIndex>, nowMs: number): void {
    for (const line of lines) this.#misreadMs.set(line, nowMs);
  }

  /** A decode was spent on these lines. */
  noteDecode(lines: Iterable<LineIndex>, nowMs: number): void {
    for (const line of lines) {
      const lately = (this.#decodedMs.get(line) ?? []).filter((atMs) => nowMs - atMs < windowMs);
      lately.push(nowMs);
      this.#decodedMs.set(line, lately);
      this.#misreadMs.set(line, nowMs);
      if (lately.length >= decodesAWindow) this.#loose.add(line);
    }
  }

  /** Forgets the decodes so far: the changes behind them were meant. */
  forgiveDecodes(): void {
    this.#decodedMs.clear();
  }

  /** Whether the line has a decode left in this second. */
  mayDecode(line: LineIndex, nowMs: number): boolean {
    const lately = (this.#decodedMs.get(line) ?? []).filter((atMs) => nowMs - atMs < windowMs);
    return lately.length < decodesAWindow;
  }

  /** The lines that keep changing, those left alone for long enough let go. */
  looseLines(nowMs: number): ReadonlySet<LineIndex> {
    for (const line of this.#loose)
      if (nowMs - (this.#misreadMs.get(line) ?? 0) >= trustedAfterMs) this.#loose.delete(line);
    return this.#loose;
  }
}
