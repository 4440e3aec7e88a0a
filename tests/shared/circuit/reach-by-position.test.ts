import * as fc from "fast-check";
import { MultiUndirectedGraph } from "graphology";
import { connectedComponents } from "graphology-components";
import { describe, expect, it } from "vitest";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import type { CircuitModel } from "../../../shared/circuit/model.ts";
import { testDepth } from "../../depth.ts";
import { anyWiring } from "../rules/any-wiring.ts";
import { wire } from "../rules/wire.ts";

const runs = { numRuns: 300 * testDepth };

/** Ways by node in one position of all switches: every join drawn anew and walked by a general library. */
function waysByNode(model: CircuitModel, position: ReadonlyMap<string, 0 | 1>): Map<string, string[]> {
  const graph = new MultiUndirectedGraph();
  for (const id of model.buses.nodes.keys()) graph.mergeNode(id);
  for (const { class: conductor, fromNode, toNode } of model.conductors)
    if (conductor !== "crossed") graph.mergeEdge(fromNode, toNode);
  for (const { kind, from, to, station, closedIn } of model.buses.links) {
    const isClosed =
      kind === "fuse" || kind === "contact" || (kind === "switch" && position.get(station) === closedIn);
    if (isClosed) graph.mergeEdge(from, to);
  }
  const heads = model.buses.links.filter(({ kind }) => kind === "device" || kind === "bar");
  return new Map(
    connectedComponents(graph).flatMap((nodes) => {
      const ways = heads.filter(({ to }) => nodes.includes(to)).map(({ station }) => station as string);
      return nodes.map((node) => [node, ways.sort()] as const);
    }),
  );
}

const positionsOf = (switches: readonly string[]): Map<string, 0 | 1>[] =>
  Array.from(
    { length: 2 ** switches.length },
    (_, bits) => new Map(switches.map((id, at) => [id, ((bits >> at) & 1) as 0 | 1])),
  );

// Reference: every position of every switch, one after the other, with graphology-components.
describe("what reaches a node", () => {
  it("is what reaches it in some and in every position of the switches, tried one by one", () => {
    fc.assert(
      fc.property(anyWiring, (wiring) => {
        const model = buildModel(wiring);
        const tried = positionsOf(model.buses.switches).map((position) => waysByNode(model, position));
        for (const node of model.buses.nodes.keys()) {
          const lists = tried.map((ways) => ways.get(node) ?? []);
          const sometimes = [...new Set(lists.flat())].sort();
          const { always, sometimes: found, isPermanent } = model.reachOf(node);
          expect(found).toEqual(sometimes);
          expect(always).toEqual(sometimes.filter((way) => lists.every((list) => list.includes(way))));
          expect(isPermanent).toBe(lists.every((list) => list.length > 0));
        }
      }),
      runs,
    );
  });

  it("turns a lamp on and off by exactly the switches that change it with the others left as they are", () => {
    fc.assert(
      fc.property(anyWiring, (wiring) => {
        const model = buildModel(wiring);
        const { switches } = model.buses;
        const tried = positionsOf(switches).map((position) => waysByNode(model, position));
        for (const { live, controlledBy } of model.lamps) {
          const isOn = tried.map((ways) => (ways.get(live) ?? []).length > 0);
          const changing = switches.filter((_, bit) => isOn.some((on, at) => on !== isOn[at ^ (1 << bit)]));
          expect(controlledBy).toEqual([...changing].sort());
        }
      }),
      runs,
    );
  });

  it("is worked out for as many switches as a house has, each lamp by its own", () => {
    const lines = Array.from({ length: 40 }, (_, at) => [
      `${at === 0 ? "way-1.a" : `rose-${at}.b`} rose-${at + 1}.a 1`,
      `rose-${at + 1}.s switch-${at + 1}.s 1`,
    ]).flat();
    const { lamps } = buildModel(wire(lines));
    expect(lamps.map(({ controlledBy }) => controlledBy)).toEqual(
      lamps.map(({ station }) => [station.replace("rose", "switch")]),
    );
  });

  it("is not said to be always there where more switches work on each other than can be tried", () => {
    const switching = "intermediate" as const;
    const chain = Array.from({ length: 12 }, (_, at) => `switch-${at + 1}.w switch-${at + 2}.v 1`);
    const settings = Object.fromEntries([
      ["way-1", { deviceRatingA: 6 }],
      ...Array.from({ length: 13 }, (_, at) => [`switch-${at + 1}`, { switching }]),
    ]) as Record<string, object>;
    const wiring = wire(["way-1.a switch-1.v 1 L:strap1", ...chain, "switch-13.w lamp-1.a 1 strap1:L"], {
      settings,
    });
    const { lamps } = buildModel(wiring);
    expect(lamps.map(({ isLitAlways, controlledBy }) => [isLitAlways, controlledBy.length])).toEqual([
      [false, 13],
    ]);
  });
});
