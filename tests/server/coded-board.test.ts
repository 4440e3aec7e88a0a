import { describe, expect, it } from "vitest";
import { boardLines } from "../../hardware/lines/board-lines.ts";
import { shippedBoard } from "../hardware/scan/program-bench.ts";
import { leadsOf, TestBench } from "./test-bench.ts";

const board = shippedBoard("workshop-coded");

/** Straps the code contacts of an entry as a plug of that code does. */
function strap(bench: TestBench, at: string, code: number): void {
  const { codeContacts = [] } = boardLines(board).entries.find(({ entry }) => entry === at) ?? {};
  codeContacts.forEach((contact, bit) => bench.port.lines!.setCode(contact, ((code >> bit) & 1) === 1));
}

/** A bench on the shipped coded board with one cable in, its two plugs telling these codes. */
async function withPlugs(atWay: number, atSocket: number): Promise<TestBench> {
  const bench = await new TestBench({ parts: { board } }).start();
  await bench.isWiring();
  strap(bench, "way-1.a", atWay);
  strap(bench, "socket-1.a", atSocket);
  bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
  bench.clock.advance(3_000);
  return bench;
}

describe("a cable on the shipped coded board, through the server", () => {
  // Codes 2 and 3 of the description are 1.5 and 2.5 mm².
  it.each([
    { code: 2, csaMm2: 1.5 },
    { code: 3, csaMm2: 2.5 },
  ])("has the size $csaMm2 mm² where both plugs tell code $code", async ({ code, csaMm2 }) => {
    const bench = await withPlugs(code, code);
    expect(bench.attempt().cables).toMatchObject([{ csaMm2 }]);
    expect(bench.view().boardHealth).toBeUndefined();
  });

  it.each([
    [2, 3],
    [3, 2],
  ])(
    "has no size where its plugs tell codes %i and %i, and a fault names both entries",
    async (way, socket) => {
      const bench = await withPlugs(way, socket);
      const [cable] = bench.attempt().cables;
      expect(cable).toBeDefined();
      expect(cable).not.toHaveProperty("csaMm2");
      const [fault] = bench.view().boardHealth?.faults ?? [];
      expect(fault?.kind).toBe("codes-differ");
      expect(Object.values(fault?.facts ?? {}).sort()).toEqual([2, 3, "socket-1.a", "way-1.a"]);
      await bench.does("ask-verdict", {});
      // The smaller size is never held against the learner: what is missing is said instead.
      const { verdict } = bench.attempt();
      expect(JSON.stringify(verdict?.findings)).not.toMatch(/1\.5/);
      expect(verdict?.undetermined.length).toBeGreaterThan(0);
    },
  );
});
