import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LinkedSupplyError, prepareNetwork, solveNetwork } from "../../../shared/electrical/network.ts";
import { randomNetwork } from "../../reference/random-network.ts";

const supply = [{ node: 0, voltageV: 230 }];

describe("current in a resistive network", () => {
  it("divides between the legs of a ring in the inverse of their resistances", () => {
    // Node 0 is the origin; 10 A taken a quarter of the way round a 1 ohm ring: 7.5 A and 2.5 A.
    const ring = {
      nodeCount: 3,
      resistors: [
        { a: 0, b: 1, resistanceOhm: 0.25 },
        { a: 1, b: 2, resistanceOhm: 0.5 },
        { a: 2, b: 0, resistanceOhm: 0.25 },
      ],
      held: supply,
    };
    const { resistorCurrentA, voltageV } = solveNetwork(ring, [{ from: 1, to: 0, currentA: 10 }]);
    expect(resistorCurrentA[0]).toBeCloseTo(7.5, 10);
    expect(resistorCurrentA[2]).toBeCloseTo(-2.5, 10);
    expect(voltageV[1]).toBeCloseTo(230 - 1.875, 10);
  });

  it("does not cross a balanced bridge", () => {
    // Wheatstone (1843): with equal ratios of the arms the middle lead carries nothing.
    const { resistorCurrentA, heldCurrentA } = solveNetwork({
      nodeCount: 4,
      resistors: [
        { a: 0, b: 1, resistanceOhm: 1 },
        { a: 0, b: 2, resistanceOhm: 2 },
        { a: 1, b: 3, resistanceOhm: 3 },
        { a: 2, b: 3, resistanceOhm: 6 },
        { a: 1, b: 2, resistanceOhm: 5 },
      ],
      held: [...supply, { node: 3, voltageV: 0 }],
    });
    expect(resistorCurrentA[4]).toBeCloseTo(0, 10);
    expect(heldCurrentA[0]).toBeCloseTo(230 / 4 + 230 / 8, 9);
    expect(heldCurrentA[1]).toBeCloseTo(-230 / 4 - 230 / 8, 9);
  });

  it("passes whole through a closed device, whichever lead it came by", () => {
    const { linkCurrentA, resistorCurrentA } = solveNetwork(
      {
        nodeCount: 4,
        resistors: [
          { a: 1, b: 2, resistanceOhm: 0.1 },
          { a: 1, b: 2, resistanceOhm: 0.3 },
          { a: 2, b: 3, resistanceOhm: 0.5 },
        ],
        links: [{ a: 0, b: 1 }],
        held: supply,
      },
      [{ from: 3, to: 0, currentA: 8 }],
    );
    expect(linkCurrentA[0]).toBeCloseTo(8, 10);
    expect([...resistorCurrentA]).toEqual([
      expect.closeTo(6, 10),
      expect.closeTo(2, 10),
      expect.closeTo(8, 10),
    ]);
  });

  it("is shared evenly by two links side by side", () => {
    const { linkCurrentA } = solveNetwork(
      {
        nodeCount: 2,
        resistors: [],
        links: [
          { a: 0, b: 1 },
          { a: 1, b: 0 },
        ],
        held: supply,
      },
      [{ from: 1, to: 0, currentA: 8 }],
    );
    expect([...linkCurrentA]).toEqual([expect.closeTo(4, 12), expect.closeTo(-4, 12)]);
  });

  it("does not flow where a load has no way back", () => {
    const { stranded, heldCurrentA, reached } = solveNetwork(
      {
        nodeCount: 4,
        resistors: [
          { a: 0, b: 1, resistanceOhm: 1 },
          { a: 2, b: 3, resistanceOhm: 1 },
        ],
        held: supply,
      },
      [{ from: 1, to: 3, currentA: 5 }],
    );
    expect([...stranded]).toEqual([1]);
    expect(heldCurrentA[0]).toBe(0);
    expect([...reached]).toEqual([1, 1, 0, 0]);
  });

  it("passes by an open conductor", () => {
    const { reached } = solveNetwork({
      nodeCount: 2,
      resistors: [{ a: 0, b: 1, resistanceOhm: Infinity }],
      held: supply,
    });
    expect([...reached]).toEqual([1, 0]);
  });

  it("has no answer where two supplies are linked without resistance", () => {
    const network = {
      nodeCount: 2,
      resistors: [],
      links: [{ a: 0, b: 1 }],
      held: [...supply, { node: 1, voltageV: 0 }],
    };
    expect(() => prepareNetwork(network)).toThrow(LinkedSupplyError);
  });

  it("refuses a lead of no resistance", () => {
    expect(() =>
      solveNetwork({ nodeCount: 2, resistors: [{ a: 0, b: 1, resistanceOhm: 0 }], held: supply }),
    ).toThrow(RangeError);
  });
});

describe("whatever the network", () => {
  it("what enters a node leaves it, and what the supplies give the loads take", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const { network, sources } = randomNetwork(seed);
        const solution = solveNetwork(network, sources);
        const sumA = new Float64Array(network.nodeCount);
        network.resistors.forEach(({ a, b }, at) => {
          sumA[a]! -= solution.resistorCurrentA[at]!;
          sumA[b]! += solution.resistorCurrentA[at]!;
        });
        network.links?.forEach(({ a, b }, at) => {
          sumA[a]! -= solution.linkCurrentA[at]!;
          sumA[b]! += solution.linkCurrentA[at]!;
        });
        sources.forEach(({ from, to, currentA }, at) => {
          if (solution.stranded[at]) return;
          sumA[from]! -= currentA;
          sumA[to]! += currentA;
        });
        network.held.forEach(({ node }, at) => (sumA[node]! += solution.heldCurrentA[at]!));
        for (const each of sumA) expect(Math.abs(each)).toBeLessThan(1e-6);
      }),
    );
  });

  it("the own resistance of a node is what one ampere into it raises it by", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const { network } = randomNetwork(seed);
        const prepared = prepareNetwork({
          ...network,
          held: network.held.map(({ node }) => ({ node, voltageV: 0 })),
        });
        const own = prepared.ownOhm();
        for (let node = 0; node < network.nodeCount; node++) {
          const { voltageV, reached } = prepared.solve([{ from: 0, to: node, currentA: 1 }]);
          if (!reached[node]) expect(own[node]).toBe(Infinity);
          else expect(Math.abs(own[node]! - voltageV[node]!)).toBeLessThan(1e-9 * Math.max(1, own[node]!));
        }
      }),
    );
  });

  it("two load cases together give the sum of each alone", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const { network, sources } = randomNetwork(seed);
        const prepared = prepareNetwork(network);
        const none = prepared.solve();
        const half = Math.floor(sources.length / 2);
        const first = prepared.solve(sources.slice(0, half));
        const second = prepared.solve(sources.slice(half));
        const both = prepared.solve(sources);
        both.voltageV.forEach((value, node) => {
          const sumV = first.voltageV[node]! + second.voltageV[node]! - none.voltageV[node]!;
          expect(Math.abs(value - sumV)).toBeLessThan(1e-6 * Math.max(1, Math.abs(value)));
        });
      }),
    );
  });
});
