import { type LineIndex, lineIndex } from "../../../hardware/lines/line-index.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";

export function shuffled(count: number, random: () => number): LineIndex[] {
  const order = Array.from({ length: count }, (_, index) => lineIndex(index));
  for (let last = count - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}

/** Disjoint groups of the sizes asked for, on lines taken at random; those that no longer fit are left out. */
export function randomGroups(
  lineCount: number,
  sizes: readonly number[],
  random: () => number,
): LineIndex[][] {
  const order = shuffled(lineCount, random);
  return sizes.flatMap((size) => {
    const group = order.splice(0, size);
    return group.length === size && size > 1 ? [group.sort((a, b) => a - b)] : [];
  });
}

/** A board with each group wired as a random tree of leads. */
export function wiredBoard(
  lineCount: number,
  groups: readonly LineIndex[][],
  random: () => number,
): SimulatedLines {
  const lines = new SimulatedLines(lineCount);
  for (const group of groups)
    group.forEach((line, index) => {
      if (index > 0) lines.join(line, group[Math.floor(random() * index)]!);
    });
  return lines;
}

export const byLeast = (groups: readonly LineIndex[][]): LineIndex[][] =>
  groups.map((group) => [...group].sort((a, b) => a - b)).sort((a, b) => a[0]! - b[0]!);
