import { describe, expect, it } from "vitest";
import { BenchLoop } from "../../server/bench/bench-loop.ts";
import { noLeads } from "../../shared/board/board-leads.ts";
import { noBoardKeys } from "../../shared/protocol/said-keys.ts";
import { TestBench } from "./test-bench.ts";

/** A bench whose board is told of by the check. */
function told(): { bench: TestBench; board: BenchLoop } {
  const bench = new TestBench({ isSimulated: false });
  return { bench, board: new BenchLoop(bench.bench.core) };
}

describe("a board that is not there", () => {
  it("is said on the terminal and in the journal with what to do, at the start", () => {
    const { bench, board } = told();
    board.lost({ code: "board-not-found", facts: { bcm: 17 } });
    expect(bench.notes).toEqual([
      "board: The mock board does not answer (every line, read through BCM 17, is low): check the ribbon cable and " +
        "the board's 3.3 V supply; the bench goes on by itself once the board is there.",
    ]);
  });

  it("is said once, however often it is tried, and again when the reason is another", () => {
    const { bench, board } = told();
    for (let turn = 0; turn < 5; turn += 1) board.lost({ code: "no-rights", facts: {} });
    board.lost({ code: "scanner-stopped", facts: {} });
    expect(bench.notes).toEqual([
      expect.stringContaining("add it to the gpio group"),
      expect.stringContaining("it is started again by itself"),
    ]);
  });

  it("is said whenever it is lost, and that it is back", () => {
    const { bench, board } = told();
    const info = { hasCodes: false, hasProbes: false, leads: noLeads };
    board.opened(info);
    expect(bench.notes).toEqual([]);
    for (let turn = 0; turn < 2; turn += 1) {
      board.lost({ code: "board-not-found", facts: {} });
      board.opened(info);
    }
    expect(bench.notes).toEqual([
      expect.stringContaining("ribbon cable"),
      "board: it is there again",
      expect.stringContaining("ribbon cable"),
      "board: it is there again",
    ]);
  });

  it.each(Object.keys(noBoardKeys))("has what to do for %s", (key) => {
    const { bench, board } = told();
    board.lost({ code: key.replace("no-board.", ""), facts: {} });
    expect(bench.notes[0]).toMatch(/^board: .+: .*(check|install|use|add|take|run|restart).+\.$/s);
  });
});
