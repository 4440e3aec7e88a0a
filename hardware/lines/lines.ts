/** One reading of the board: a 1 for each line (or code contact) that reads low, a 0 for each that reads high. */
export interface LineReading {
  lines: Uint8Array;
  /** The code contacts, empty on boards without codes. Only meaningful when nothing was pulled. */
  codes: Uint8Array;
}

/**
 * The electrical edge of a board, and all that the scanner knows of it. A line reads low when any line joined
 * to it is pulled. Makers: the 595/165 chain, direct pins, and the simulated board; one contract suite holds
 * them all.
 */
export interface Lines {
  readonly lineCount: number;
  readonly codeCount: number;
  /**
   * Reads every line as it stands under the pattern given before (nothing pulled before the first call), then
   * pulls exactly the lines that are 1 in `next` and releases the rest. One call so that a chain can shift the
   * next pattern out while the last one is shifted in.
   *
   * @throws LinesError when a pin cannot be read or written.
   */
  exchange(next: Uint8Array): LineReading;
  /** Releases every line and every pin. Safe to call twice. */
  close(): void;
}

/** A broken machine: which call on which pin failed, for the edge that turns it into a sentence. */
export class LinesError extends Error {
  constructor(
    readonly code:
      | "board-not-found"
      | "no-gpio-driver"
      | "no-sysfs-gpio"
      | "no-rights"
      | "pin-in-use"
      | "unknown-chip"
      | "pin-failed",
    readonly facts: Record<string, string | number>,
    cause?: unknown,
  ) {
    super(`${code} ${JSON.stringify(facts)}`, { cause });
  }
}
