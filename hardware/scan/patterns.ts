import type { LineIndex } from "../lines/line-index.ts";
import type { LineReading, Lines } from "../lines/lines.ts";

/**
 * A scan in progress. Each `yield` is one exchange: it pulls the pattern given and gives back the reading under
 * the pattern before. A scan begins with nothing pulled and leaves nothing pulled.
 */
export type Scan<Result> = Generator<Uint8Array, Result, LineReading>;

/** One pattern and what was read under it. */
export interface Evidence {
  pulled: Uint8Array;
  reading: Uint8Array;
}

export const patternOf = (lineCount: number, lines: Iterable<LineIndex>): Uint8Array => {
  const pattern = new Uint8Array(lineCount);
  for (const line of lines) pattern[line] = 1;
  return pattern;
};

/**
 * Pulls the patterns one after the other and lets go. Costs one exchange more than there are patterns; the
 * reading with nothing pulled, taken at its start, comes with it.
 */
export function* pullEach(
  lineCount: number,
  patterns: readonly Uint8Array[],
): Scan<{ released: LineReading; evidence: Evidence[] }> {
  const released = new Uint8Array(lineCount);
  const [first = released, ...rest] = patterns;
  const atStart = yield first;
  const evidence: Evidence[] = [];
  let pulled = first;
  for (const next of patterns.length === 0 ? [] : [...rest, released]) {
    evidence.push({ pulled, reading: (yield next).lines });
    pulled = next;
  }
  return { released: atStart, evidence };
}

/** Runs a scan on a board to its end. */
export function runScan<Result>(lines: Lines, scan: Scan<Result>): Result {
  let turn = scan.next();
  while (turn.done !== true) turn = scan.next(lines.exchange(turn.value));
  return turn.value;
}
