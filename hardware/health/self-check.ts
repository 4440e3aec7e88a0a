import { chipOrder } from "./chip-order.ts";
import { allLines, type LineIndex } from "../lines/line-index.ts";
import type { LineHealth } from "../lines/line-model.ts";
import { patternOf, type Scan } from "../scan/patterns.ts";

export interface SelfCheckResult {
  health: LineHealth[];
  /** Sets of lines that read as one though the board is empty: their outputs are tied, or a lead is still in. */
  tied: LineIndex[][];
  /** Probes that lie on something, each with the lines it touches. */
  probesDown: { probe: LineIndex; at: LineIndex[] }[];
  /** Lines that no two rounds found alike: the board is noisy there, and nothing else of it is told. */
  noisy: LineIndex[];
  /** Inputs and outputs of the chain stand in different orders (`chipOrder`); then nothing else is told. */
  chipOrder: string | undefined;
}

interface Round extends Omit<SelfCheckResult, "noisy" | "chipOrder"> {
  /** For every line, the lines that answered when it was pulled alone. */
  heardBy: LineIndex[][];
}

/** A board that is well but for a chance reading agrees with itself in fewer. */
const mostRounds = 5;

/**
 * Pulls every line of an empty board alone and looks who answers. Slow and sure: one pattern a line, and what is
 * found wrong must be found twice running. `progress` is told how many lines of a round are done.
 */
export function* selfCheck(
  lineCount: number,
  progress: (doneCount: number) => void,
  probes: readonly LineIndex[] = [],
): Scan<SelfCheckResult> {
  const noisy = new Set<LineIndex>();
  let before = yield* checkRound(lineCount, progress, probes);
  if (isSound(before)) return resultOf(before);
  for (let round = 2; round <= mostRounds; round += 1) {
    const found = yield* checkRound(lineCount, progress, probes);
    const differing = allLines(lineCount).filter((line) => told(before, line) !== told(found, line));
    if (differing.length === 0) return resultOf(found);
    differing.forEach((line) => noisy.add(line));
    before = found;
  }
  return { ...nothing(lineCount), noisy: [...noisy].sort((a, b) => a - b) };
}

const nothing = (lineCount: number): SelfCheckResult => ({
  health: new Array<LineHealth>(lineCount).fill("healthy"),
  tied: [],
  probesDown: [],
  noisy: [],
  chipOrder: undefined,
});

function resultOf({ heardBy, ...round }: Round): SelfCheckResult {
  const order = chipOrder(heardBy);
  return order === undefined
    ? { ...nothing(heardBy.length), ...round }
    : { ...nothing(heardBy.length), chipOrder: order };
}

const isSound = ({ health, tied, probesDown }: Round): boolean =>
  tied.length === 0 && probesDown.length === 0 && health.every((each) => each === "healthy");

/** What a round says of a line, to be compared. */
const told = ({ health, tied, probesDown }: Round, line: LineIndex): string =>
  [
    health[line],
    ...tied.filter((together) => together.includes(line)).map(String),
    ...probesDown.filter(({ probe }) => probe === line).map(({ at }) => `on ${at.join()}`),
  ].join(" ");

function* checkRound(
  lineCount: number,
  progress: (doneCount: number) => void,
  probes: readonly LineIndex[],
): Scan<Round> {
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
    // A probe that lies on a contact is a hand's doing: it ties nothing.
    const together = lines.filter(
      (other) => (other === line || heard.includes(other)) && !probes.includes(other),
    );
    if (together.length < 2 || together.every((each) => seen.has(each))) return;
    tied.push(together);
    for (const each of together) {
      seen.add(each);
      health[each] = "outputs-tied";
    }
  });
  const probesDown = probes.flatMap((probe) => {
    const at = lines.filter((line) => line !== probe && heardBy[probe]!.includes(line));
    return at.length === 0 ? [] : [{ probe, at }];
  });
  return { health, tied, probesDown, heardBy };
}
