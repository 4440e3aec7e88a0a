import type { LineIndex } from "../lines/line-index.ts";

/** So many misreads in so long that a decode finds no cause for, at so many lines: the whole board is noisy. */
const windowMs = 5_000;
const misreadCount = 3;
const lineCount = 7;

/**
 * Misreads after which the board was looked at and found as it was. One line that misreads is a loose contact;
 * misreads all over the board are its clocks, its feed or its earth.
 */
export class CauselessMisreads {
  #misreads: { atMs: number; lines: readonly LineIndex[] }[] = [];

  /** Notes one, and says whether they are now scattered over the board. */
  note(lines: readonly LineIndex[], nowMs: number): boolean {
    this.#misreads.push({ atMs: nowMs, lines });
    this.#misreads = this.#misreads.filter(({ atMs }) => nowMs - atMs < windowMs);
    const places = new Set(this.#misreads.flatMap((misread) => misread.lines));
    return this.#misreads.length >= misreadCount && places.size >= lineCount;
  }
}
