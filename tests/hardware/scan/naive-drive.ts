import { type LineIndex, lineIndex } from "../../../hardware/lines/line-index.ts";
import type { Lines } from "../../../hardware/lines/lines.ts";

/**
 * The slow and obvious way to find the joins of a healthy board: pull one line at a time and see which read low.
 * Gives the groups of two and more, each in line order, by their least line.
 */
export function naiveDrive(lines: Lines): LineIndex[][] {
  const groups: LineIndex[][] = [];
  const seen = new Set<number>();
  for (let line = 0; line < lines.lineCount; line += 1) {
    const alone = new Uint8Array(lines.lineCount);
    alone[line] = 1;
    lines.exchange(alone);
    const reading = lines.exchange(new Uint8Array(lines.lineCount)).lines;
    const group = [...reading.keys()].filter((other) => reading[other] === 1);
    if (group.length > 1 && !seen.has(line)) groups.push(group.map(lineIndex));
    group.forEach((member) => seen.add(member));
  }
  return groups;
}
