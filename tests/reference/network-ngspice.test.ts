import { describe, expect, it } from "vitest";
import { solveNetwork } from "../../shared/electrical/network.ts";
import { islands, skipsNgspice, solveWithNgspice } from "./ngspice.ts";
import { randomNetwork } from "./random-network.ts";
import { testDepth } from "../depth.ts";

/** 1e-6 relative or 1 microamp; voltages 1e-6 relative or 1 microvolt. */
const agrees = (ours: number, theirs: number): boolean =>
  Math.abs(ours - theirs) <= Math.max(1e-6, 1e-6 * Math.abs(theirs));

describe.skipIf(skipsNgspice)("networks of any shape, against ngspice", () => {
  // ngspice (Debian package) as an independent solver: gmin 1e-15, 15 digits.
  it("give the same voltage at every node and the same current in every lead, link and supply", () => {
    const cases = Array.from({ length: 200 * testDepth }, (_, seed) => randomNetwork(seed + 1));
    const solved = cases.map(({ network, sources }) => solveNetwork(network, sources));
    const wrong: string[] = [];
    // ngspice would press the current of a load without a supply through 1e15 ohm; we say that none flows.
    const answers = solveWithNgspice(
      cases.map(({ network, sources }, index) => {
        const { isFed } = islands(network);
        const flows = sources.map(({ from, to }) => isFed[from]! && isFed[to]!);
        if (flows.some((flow, at) => flow === (solved[index]!.stranded[at] === 1)))
          wrong.push(`seed ${index + 1} stranded`);
        return { network, sources: sources.filter((_, at) => flows[at]) };
      }),
    );
    let compared = 0;
    answers.forEach((answer, index) => {
      const ours = solved[index]!;
      const compare = (what: string, mine: number, theirs: number | undefined): void => {
        if (theirs === undefined) return;
        compared++;
        if (!agrees(mine, theirs)) wrong.push(`seed ${index + 1} ${what}: ${mine} against ${theirs}`);
      };
      answer.voltageV.forEach((value, node) => {
        if (ours.reached[node]) compare(`node ${node}`, ours.voltageV[node]!, value);
      });
      answer.resistorCurrentA.forEach((value, at) =>
        compare(`resistor ${at}`, ours.resistorCurrentA[at]!, value),
      );
      answer.linkCurrentA.forEach((value, at) => compare(`link ${at}`, ours.linkCurrentA[at]!, value));
      answer.heldCurrentA.forEach((value, at) => compare(`supply ${at}`, ours.heldCurrentA[at]!, value));
    });
    expect(wrong.slice(0, 10)).toEqual([]);
    expect(compared).toBeGreaterThan(50 * cases.length);
  });
});
