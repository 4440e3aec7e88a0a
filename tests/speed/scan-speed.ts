import { decodeLines } from "../../hardware/scan/decode.ts";
import { randomGroups, wiredBoard } from "../hardware/scan/random-copper.ts";
import { seeded } from "../seeded.ts";
import { quantile, type SpeedLine } from "./speed-line.ts";

const boards = 1_000;

/** Patterns of a full decode for boards wired at random with pairs on all of their lines. */
const patternCounts = (lineCount: number, seed: number): number[] =>
  Array.from({ length: boards }, (_, board) => {
    const random = seeded(seed + board);
    const pairs = new Array<number>(Math.floor(lineCount / 2)).fill(2);
    const lines = wiredBoard(lineCount, randomGroups(lineCount, pairs, random), random);
    if (!decodeLines(lines).isAccepted)
      throw new Error(`a healthy board of seed ${seed + board} was not accepted`);
    return lines.exchangeCount - 1;
  });

/** Patterns for a full decode: what it costs on a real board is this times the calls of a pattern. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const counts = patternCounts(200, seed);
  const median = quantile(counts, 0.5);
  const late = quantile(counts, 0.99);
  const growth = [64, 128, 256, 512].map((lineCount) => quantile(patternCounts(lineCount, seed), 0.5));
  return [
    {
      what: "patterns for a full decode, 200 lines, 100 pairs: median",
      reached: String(median),
      target: "18",
      ok: median <= 18,
    },
    {
      what: "patterns for a full decode, 200 lines, 100 pairs: 99 %",
      reached: String(late),
      target: "19 or fewer",
      ok: late <= 19,
    },
    {
      what: "patterns at 64, 128, 256, 512 lines: median",
      reached: growth.join(", "),
      target: "at most 3 more for twice the lines",
      ok: growth.every((count, index) => index === 0 || count - (growth[index - 1] ?? 0) <= 3),
    },
  ];
};
