import { describe, expect, it } from "vitest";
import { copperOf } from "../../shared/electrical/copper.ts";
import type { CurrentSource } from "../../shared/electrical/network.ts";
import { loadNodes, solveWiring, wiringNetwork } from "../../shared/electrical/wiring-network.ts";
import { testDepth } from "../depth.ts";
import { skipsNgspice, solveWithNgspice } from "./ngspice.ts";
import { randomWiring } from "./random-wiring.ts";

const agrees = (ours: number, theirs: number): boolean =>
  Math.abs(ours - theirs) <= Math.max(1e-6, 1e-6 * Math.abs(theirs));

describe.skipIf(skipsNgspice)("wirings of any kind, nonsense included, against ngspice", () => {
  it("carry the same current in every conductor, device and fuse, with the same voltage at every point", () => {
    const cases = Array.from({ length: 200 * testDepth }, (_, seed) => {
      const wiring = randomWiring(seed + 1);
      const copper = copperOf(wiring);
      const net = wiringNetwork(copper, { temperatureC: 70 });
      const loads = wiring.loads!.flatMap(({ station, powerW }) => {
        const nodes = loadNodes(copper, station);
        return nodes ? [{ ...nodes, currentA: powerW / 230 }] : [];
      });
      return { net, loads, ours: solveWiring(net, loads) };
    });
    // The currents that loads draw follow their open voltage; ngspice finds those first.
    const open = solveWithNgspice(cases.map(({ net }) => ({ network: net.network, sources: [] })));
    const sources = cases.map(({ net, loads }, index) =>
      loads.flatMap(({ lineNode, neutralNode, currentA }): CurrentSource[] => {
        if (!net.prepared.solve().reached[lineNode] || !net.prepared.solve().reached[neutralNode]) return [];
        const openV = open[index]!.voltageV[lineNode]! - open[index]!.voltageV[neutralNode]!;
        return [{ from: lineNode, to: neutralNode, currentA: (currentA * openV) / 230 }];
      }),
    );
    const answers = solveWithNgspice(
      cases.map(({ net }, index) => ({ network: net.network, sources: sources[index]! })),
    );
    const wrong: string[] = [];
    let compared = 0;
    cases.forEach(({ net, ours }, index) => {
      const compare = (what: string, mine: number, theirs: number): void => {
        compared++;
        if (!agrees(mine, theirs)) wrong.push(`seed ${index + 1} ${what}: ${mine} against ${theirs}`);
      };
      const answer = answers[index]!;
      ours.conductorA.forEach((currentA, at) =>
        compare(net.copper.conductors[at]!.id, currentA, answer.resistorCurrentA[at]!),
      );
      ours.linkA.forEach((currentA, at) => {
        const place = net.closedIndex[at]!;
        compare(`link ${at}`, currentA, place < 0 ? 0 : answer.linkCurrentA[place]!);
      });
      ours.nodeV.forEach((voltageV, node) => {
        if (ours.reached[node]) compare(net.copper.nodes[node]!, voltageV, answer.voltageV[node]!);
      });
    });
    expect(wrong.slice(0, 10)).toEqual([]);
    expect(compared).toBeGreaterThan(50 * cases.length);
  });
});
