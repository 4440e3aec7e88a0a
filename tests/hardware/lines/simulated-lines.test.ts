import { describe, expect, it } from "vitest";
import { lineIndex as line } from "../../../hardware/lines/line-index.ts";
import { SimulatedLines } from "../../../hardware/lines/simulated-lines.ts";
import { linesContract } from "./lines-contract.ts";

for (const [lineCount, codeCount] of [
  [8, 0],
  [24, 0],
  [206, 120],
] as const)
  linesContract(`the simulated board of ${lineCount} lines`, () => {
    const lines = new SimulatedLines(lineCount, codeCount);
    return {
      lines,
      join: (a, b) => lines.join(line(a), line(b)),
      part: (a, b) => lines.part(line(a), line(b)),
      ...(codeCount > 0 && { setCode: (index: number, on: boolean) => lines.setCode(index, on) }),
      pulledLines: () => lines.pulledLines(),
    };
  });

describe("a simulated line with a fault", () => {
  const lowUnder = (lines: SimulatedLines, ...pulled: number[]): number[] => {
    const next = new Uint8Array(lines.lineCount);
    for (const index of pulled) next[index] = 1;
    lines.exchange(next);
    const reading = lines.exchange(new Uint8Array(lines.lineCount)).lines;
    return [...reading.keys()].filter((index) => reading[index] === 1);
  };
  const board = (): SimulatedLines => {
    const lines = new SimulatedLines(8);
    lines.join(line(1), line(2));
    return lines;
  };

  it("takes its group low with it when it is shorted to 0 V", () => {
    const lines = board();
    lines.setFault(line(1), "stuck-low");
    expect(lowUnder(lines)).toEqual([1, 2]);
    lines.part(line(1), line(2));
    expect(lowUnder(lines)).toEqual([1]);
  });

  it("keeps its group high when it is shorted to the supply", () => {
    const lines = board();
    lines.setFault(line(1), "stuck-high");
    expect(lowUnder(lines, 1, 2, 3)).toEqual([3]);
  });

  it("still reads its partner when its output is dead", () => {
    const lines = board();
    lines.setFault(line(1), "dead-output");
    expect(lowUnder(lines, 1)).toEqual([]);
    expect(lowUnder(lines, 2)).toEqual([1, 2]);
  });

  it("still pulls its partner when its input is dead", () => {
    const lines = board();
    lines.setFault(line(1), "dead-input");
    expect(lowUnder(lines, 1)).toEqual([2]);
    expect(lowUnder(lines, 2)).toEqual([2]);
  });

  it("pulls the line its output is tied to, though that line does not pull it back through a lead", () => {
    const lines = board();
    lines.tieOutputs(line(1), line(5));
    expect(lowUnder(lines, 5)).toEqual([1, 2, 5]);
    expect(lowUnder(lines, 2)).toEqual([1, 2]);
  });

  it("comes and goes when its contact is loose, and is steady again when mended", () => {
    const lines = board();
    lines.setFault(line(1), "loose-contact");
    const seen = new Set(Array.from({ length: 100 }, () => lowUnder(lines, 2).join()));
    expect(seen).toEqual(new Set(["2", "1,2"]));
    lines.setFault(line(1), null);
    expect(new Set(Array.from({ length: 100 }, () => lowUnder(lines, 2).join()))).toEqual(new Set(["1,2"]));
  });
});
