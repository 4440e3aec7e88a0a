import { type LineIndex, lineIndex } from "../../hardware/line-index.ts";
import { SimulatedLines } from "../../hardware/simulated-lines.ts";

/** Seeded numbers in [0, 1): mulberry32, public domain, from memory. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** How many random cases a property runs: a base number times TEST_DEPTH. */
export const cases = (count: number): number =>
  Math.max(1, Math.round(count * Number(process.env["TEST_DEPTH"] ?? 1)));

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
