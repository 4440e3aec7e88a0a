import { describe, expect, it, vi } from "vitest";
import { decodeLines } from "../../../hardware/scan/decode.ts";
import { joinedGroups } from "../../../hardware/lines/line-model.ts";
import { lineIndex } from "../../../hardware/lines/line-index.ts";
import { naiveDrive } from "./naive-drive.ts";
import { byLeast, randomGroups, wiredBoard } from "./random-copper.ts";
import { randomShare } from "../../breadth.ts";
import { testDepth } from "../../depth.ts";
import { seeded } from "../../seeded.ts";

vi.setConfig({ testTimeout: 60_000 * testDepth });

const pairs = (count: number): number[] => new Array<number>(count).fill(2);

describe("a full decode of a healthy board", () => {
  it("gives what a drive of one line at a time gives, for groups of one to eight lines", () => {
    for (let seed = 0; seed < 700 * randomShare; seed += 1) {
      const random = seeded(seed);
      const lineCount = 2 + Math.floor(random() * 220);
      const sizes = Array.from({ length: lineCount }, () =>
        random() < 0.7 ? 1 + Math.floor(random() * 2) : 1 + Math.floor(random() * 8),
      );
      const groups = randomGroups(lineCount, sizes, random);
      const lines = wiredBoard(lineCount, groups, random);
      const found = decodeLines(lines);
      expect(found.isAccepted).toBe(true);
      expect(new Set(found.model.health)).toEqual(new Set(["healthy"]));
      expect([seed, joinedGroups(found.model)]).toEqual([seed, byLeast(groups)]);
      if (seed % 20 === 0) expect(joinedGroups(found.model)).toEqual(naiveDrive(lines));
    }
  });

  it("tells groups of three from pairs that look alike", () => {
    // By index arithmetic alone {0,3,5} and {7,4,2} read like {0,7}, {3,4} and {5,2}.
    const groups = [
      [0, 3, 5],
      [2, 4, 7],
    ].map((group) => group.map(lineIndex));
    expect(joinedGroups(decodeLines(wiredBoard(8, groups, seeded(1))).model)).toEqual(groups);
  });

  const patternCounts = (lineCount: number, pairCount: number, boards: number): number[] =>
    Array.from({ length: boards }, (_, seed) => {
      const random = seeded(seed);
      const lines = wiredBoard(lineCount, randomGroups(lineCount, pairs(pairCount), random), random);
      expect(decodeLines(lines).isAccepted).toBe(true);
      // The last exchange reads the last pattern and lets go; its own pattern belongs to what follows.
      return lines.exchangeCount - 1;
    }).sort((a, b) => a - b);

  it("takes 18 patterns for 200 lines with 100 pairs in the median, and 19 or fewer in 99 of 100", () => {
    const counts = patternCounts(200, 100, 400);
    expect(counts[200]).toBeLessThanOrEqual(18);
    expect(counts[395]).toBeLessThanOrEqual(19);
  });

  it("takes patterns in proportion to the logarithm of the number of lines", () => {
    for (const lineCount of [16, 24, 64, 128, 206, 256, 512]) {
      const counts = patternCounts(lineCount, Math.floor(lineCount / 2), 200);
      expect(counts[100]).toBeLessThanOrEqual(2 * Math.ceil(Math.log2(lineCount)) + 2);
      expect(counts[197]).toBeLessThanOrEqual(2 * Math.ceil(Math.log2(lineCount)) + 4);
    }
  });
});
