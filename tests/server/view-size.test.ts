import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { leadsOfCable } from "../../server/board/leads-of-cables.ts";
import { readBoardFile, scenarioKit } from "../../server/library.ts";
import { conductorId, type ConductorId } from "../../shared/board/ids.ts";
import { changeOf } from "../../shared/protocol/view-change.ts";
import { seeded } from "../seeded.ts";
import { fullBoard } from "../speed/judge-speed.ts";
import { TestBench } from "./test-bench.ts";

const largestBytes = 6000;

/** A practice on the workshop board with a cable at every entry, and what is wrong with it on the screen. */
async function fullWorkshop(): Promise<{ bench: TestBench; cables: ConductorId[][] }> {
  const { board, bytes: boardBytes } = readBoardFile("hardware/boards/workshop.json");
  const kit = scenarioKit(readFileSync("scenarios/ring-and-spurs.json"), "ring-and-spurs.json");
  if ("problems" in kit) throw new Error("the scenario cannot be read");
  const bench = await new TestBench({
    isSimulated: false,
    scenarios: [kit],
    parts: { board, boardBytes },
  }).start();
  await bench.isWiring("practice", "ring-and-spurs");
  const cables = fullBoard(seeded(1))
    .cables.map(({ from, to }) => leadsOfCable(board, from, to).map(([a, b]) => conductorId(a, b)))
    .filter(({ length }) => length > 0);
  bench.port.byHand({ in: cables.flat() });
  bench.clock.advance(3000);
  await bench.does("ask-verdict", {});
  return { bench, cables };
}

describe("what is sent after a change on the full workshop board", () => {
  it("is no more than six kilobytes, whichever cable goes out and comes in", async () => {
    const { bench, cables } = await fullWorkshop();
    const sizes: number[] = [];
    let before = bench.view();
    expect(before.attempt?.cables.length).toBeGreaterThan(25);
    expect(before.attempt?.verdict?.findings.length).toBeGreaterThan(3);
    expect(Buffer.byteLength(JSON.stringify(before))).toBeGreaterThan(3 * largestBytes);
    const note = (): void => {
      bench.clock.advance(500);
      const now = bench.view();
      sizes.push(Buffer.byteLength(JSON.stringify(changeOf(before, now))));
      before = now;
    };
    for (const leads of cables) {
      bench.port.byHand({ out: leads });
      note();
      bench.port.byHand({ in: leads });
      note();
    }
    expect(sizes).toHaveLength(2 * cables.length);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(largestBytes);
  });
});
