import * as fc from "fast-check";
import { MultiUndirectedGraph } from "graphology";
import { connectedComponents } from "graphology-components";
import { describe, expect, it } from "vitest";
import { blocksOf } from "../../../shared/circuit/blocks.ts";
import { buildModel } from "../../../shared/circuit/build-model.ts";
import type { Branch, Ring, Zone } from "../../../shared/circuit/model.ts";
import { randomShare } from "../../breadth.ts";
import { wire } from "../rules/wire.ts";

const runs = { numRuns: 1500 * randomShare };
const letters = "abcdef";

/** Cables between a way and socket outlets, each in entries of its own: `way-1.a socket-1.a`. */
const anyCables: fc.Arbitrary<string[]> = fc
  .tuple(
    fc.integer({ min: 1, max: 8 }),
    fc.array(fc.tuple(fc.nat(99), fc.nat(99)), { minLength: 1, maxLength: 16 }),
  )
  .map(([sockets, pairs]) => {
    const stations = ["way-1", ...Array.from({ length: sockets }, (_, index) => `socket-${index + 1}`)];
    const used = new Map(stations.map((station) => [station, 0]));
    const entry = (station: string): string => {
      const at = used.get(station) ?? 0;
      used.set(station, at + 1);
      return `${station}.${letters[at] ?? ""}`;
    };
    return pairs.flatMap(([x, y]) => {
      const [a, b] = [stations[x % stations.length], stations[y % stations.length]];
      if (!a || !b || a === b || (used.get(a) ?? 0) >= 6 || (used.get(b) ?? 0) >= 6) return [];
      return [`${entry(a)} ${entry(b)}`];
    });
  })
  .filter((lines) => lines.length > 0);

interface Reference {
  graph: MultiUndirectedGraph;
  /** Cable ids of every block with more than one cable, by removal of nodes. */
  blocks: Set<string>[];
}

const stationOf = (entry: string): string => entry.slice(0, entry.indexOf("."));
const idOf = (line: string): string => line.split(" ").sort().join("~");

const graphOf = (lines: string[]): MultiUndirectedGraph => {
  const graph = new MultiUndirectedGraph();
  graph.mergeNode("way-1");
  for (const line of lines) {
    const [a = "", b = ""] = line.split(" ").map(stationOf);
    graph.mergeNode(a);
    graph.mergeNode(b);
    graph.addEdgeWithKey(idOf(line), a, b);
  }
  return graph;
};

const componentOf = (graph: MultiUndirectedGraph, node: string): string[] =>
  connectedComponents(graph).find((component) => component.includes(node)) ?? [];

/** Two cables at a node are of one block when their far ends stay joined without that node. */
function reference(lines: string[]): Reference {
  const graph = graphOf(lines);
  const blockOf = new Map(graph.edges().map((edge) => [edge, edge]));
  const root = (edge: string): string => {
    let at = edge;
    for (let up = blockOf.get(at); up !== undefined && up !== at; up = blockOf.get(at)) at = up;
    return at;
  };
  for (const node of graph.nodes()) {
    const without = graph.copy();
    without.dropNode(node);
    const parts = connectedComponents(without);
    const partOf = (edge: string): number =>
      parts.findIndex((part) => part.includes(graph.opposite(node, edge)));
    const edges = graph.edges(node);
    for (const one of edges)
      for (const other of edges) if (partOf(one) === partOf(other)) blockOf.set(root(one), root(other));
  }
  const blocks = new Map<string, Set<string>>();
  for (const edge of graph.edges()) blocks.set(root(edge), (blocks.get(root(edge)) ?? new Set()).add(edge));
  return { graph, blocks: [...blocks.values()].filter((block) => block.size > 1) };
}

const zoneOf = (lines: string[]): Zone => {
  const zone = buildModel(wire(lines, { also: ["way-1"] })).zones[0];
  if (!zone) throw new Error("a way always has a zone");
  return zone;
};

const keys = (sets: Iterable<Iterable<string>>): string[] =>
  [...sets].map((set) => [...set].sort().join(" ")).sort();
const cablesOf = ({ cables }: Ring): string[] => cables.map(({ id }) => id);

// Reference: connected components of graphology-components, and blocks by the definition, one node removed at a time.
describe("the shape of a circuit, compared with a general graph library", () => {
  it("has the stations that are joined to the way", () => {
    fc.assert(
      fc.property(anyCables, (lines) => {
        expect([...zoneOf(lines).stations].sort()).toEqual(componentOf(graphOf(lines), "way-1").sort());
      }),
      runs,
    );
  });

  it("has a ring for every block through the way and a loop for every other block", () => {
    fc.assert(
      fc.property(anyCables, (lines) => {
        const { graph, blocks } = reference(lines);
        const own = new Set(componentOf(graph, "way-1"));
        const reached = blocks.filter((block) => [...block].every((edge) => own.has(graph.source(edge))));
        const touches = (block: Set<string>): boolean =>
          [...block].some((edge) => graph.extremities(edge).includes("way-1"));
        const { rings, loops } = zoneOf(lines).shape;
        expect(keys(rings.map(cablesOf))).toEqual(keys(reached.filter(touches)));
        expect(keys(loops.map(cablesOf))).toEqual(keys(reached.filter((block) => !touches(block))));
        for (const ring of [...rings, ...loops]) {
          const nodes = new Set(cablesOf(ring).flatMap((edge) => graph.extremities(edge)));
          expect(ring.isBridged).toBe(ring.cables.length > nodes.size);
          expect(new Set(ring.stations)).toEqual(nodes);
        }
      }),
      runs,
    );
  });

  it("has as branches the cables whose removal parts something from the way, with the points they would part", () => {
    fc.assert(
      fc.property(anyCables, (lines) => {
        const graph = graphOf(lines);
        const own = componentOf(graph, "way-1");
        const parted = new Map(
          graph.edges().flatMap((edge) => {
            if (!own.includes(graph.source(edge))) return [];
            const without = graph.copy();
            without.dropEdge(edge);
            const left = componentOf(without, "way-1");
            return left.length < own.length ? [[edge, own.filter((node) => !left.includes(node))]] : [];
          }),
        );
        const { branches } = zoneOf(lines).shape;
        const found = new Map(branches.map((branch) => [branch.run.cables[0]?.id as string, branch]));
        expect([...found.keys()].sort()).toEqual([...parted.keys()].sort());
        for (const [edge, branch] of found) {
          expect(branch.pointCount).toBe(parted.get(edge)?.length);
          expect(parted.get(edge)).toContain(branch.far);
          expect(parted.get(edge)).not.toContain(branch.near);
        }
        expect(branches.every((branch) => isInOrder(branch, branches))).toBe(true);
      }),
      runs,
    );
  });
});

/** A branch comes right after what it hangs on, within its stretch of the list. */
const isInOrder = ({ index, parent, depth, end }: Branch, all: readonly Branch[]): boolean => {
  if (parent === undefined) return depth === 1 && end > index;
  const before = all[parent];
  return before !== undefined && before.index < index && end <= before.end && depth === before.depth + 1;
};

describe("blocks of a graph", () => {
  it("are linear in time and need no deep stack: a ladder of 20,000 rungs is one block", () => {
    const rungs = Array.from({ length: 20_000 }, (_, at) => ({ a: 2 * at, b: 2 * at + 1 }));
    const rails = rungs.slice(1).flatMap(({ a, b }) => [
      { a: a - 2, b: a },
      { a: b - 2, b },
    ]);
    const edges = [...rungs, ...rails];
    expect(blocksOf(40_000, edges).map((block) => block.length)).toEqual([edges.length]);
  });
});
