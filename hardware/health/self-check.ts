import { allLines, type LineIndex } from "../lines/line-index.ts";
import type { LineHealth } from "../lines/line-model.ts";
import { patternOf, type Scan } from "../scan/patterns.ts";

export interface SelfCheckResult {
  health: LineHealth[];
  /** Sets of lines that read as one though the board is empty: their outputs are tied, or a lead is still in. */
  tied: LineIndex[][];
}

/**
 * Pulls every line of an empty board alone and looks who answers. Slow and sure: one pattern a line. `progress`
 * is told how many lines are done.
 */
export function* selfCheck(lineCount: number, progress: (doneCount: number) => void): Scan<SelfCheckResult> {
  const health = new Array<LineHealth>(lineCount).fill("healthy");
  const lines = allLines(lineCount);
  const [first = [] as never, ...rest] = lines.map((line) => patternOf(lineCount, [line]));
  const released = yield first;
  const heardBy: LineIndex[][] = [];
  for (const next of [...rest, patternOf(lineCount, [])]) {
    const reading = (yield next).lines;
    heardBy.push(lines.filter((line) => reading[line] === 1 && released.lines[line] !== 1));
    progress(heardBy.length);
  }
  heardBy.forEach((heard, line) => {
    if (released.lines[line] === 1) health[line] = "stuck-low";
    else if (heard.length === 0) health[line] = "no-answer";
  });
  const tied: LineIndex[][] = [];
  const seen = new Set<LineIndex>();
  heardBy.forEach((heard, line) => {
    const together = lines.filter((other) => other === line || heard.includes(other));
    if (together.length < 2 || together.every((each) => seen.has(each))) return;
    tied.push(together);
    for (const each of together) {
      seen.add(each);
      health[each] = "outputs-tied";
    }
  });
  return { health, tied };
}
