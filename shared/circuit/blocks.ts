/** One join of a graph, by the indices of its two ends. Several may join the same two. */
export interface Edge {
  a: number;
  b: number;
}

/**
 * The blocks of a graph that hold more than one edge: the largest sets of edges in which every two lie on a
 * common simple cycle. Edges are given by index, each block and the list of blocks sorted. An edge in no block is
 * a bridge. Depth-first with an own stack, linear in edges (Hopcroft and Tarjan 1973, algorithm 447).
 */
export const blocksOf = (nodeCount: number, edges: readonly Edge[]): number[][] => {
  const { first, next } = adjacency(nodeCount, edges);
  const order = new Int32Array(nodeCount);
  const low = new Int32Array(nodeCount);
  const cursor = Int32Array.from(first);
  const blocks: number[][] = [];
  const edgeStack: number[] = [];
  let count = 0;
  for (let start = 0; start < nodeCount; start++) {
    if (order[start] !== 0) continue;
    const path: { node: number; viaEdge: number }[] = [{ node: start, viaEdge: -1 }];
    order[start] = low[start] = ++count;
    while (path.length > 0) {
      const top = path[path.length - 1];
      if (!top) break;
      const half = cursor[top.node] ?? -1;
      if (half >= 0) {
        cursor[top.node] = next[half] ?? -1;
        const edge = half >> 1;
        const ends = edges[edge];
        if (!ends || edge === top.viaEdge) continue;
        const other = half & 1 ? ends.a : ends.b;
        if (order[other] === 0) {
          edgeStack.push(edge);
          order[other] = low[other] = ++count;
          path.push({ node: other, viaEdge: edge });
        } else if ((order[other] ?? 0) < (order[top.node] ?? 0)) {
          edgeStack.push(edge);
          low[top.node] = Math.min(low[top.node] ?? 0, order[other] ?? 0);
        }
        continue;
      }
      path.pop();
      const parent = path[path.length - 1];
      if (!parent) continue;
      low[parent.node] = Math.min(low[parent.node] ?? 0, low[top.node] ?? 0);
      if ((low[top.node] ?? 0) < (order[parent.node] ?? 0)) continue;
      const block: number[] = [];
      for (let edge = edgeStack.pop(); edge !== undefined; edge = edgeStack.pop()) {
        block.push(edge);
        if (edge === top.viaEdge) break;
      }
      if (block.length > 1) blocks.push(block.sort((a, b) => a - b));
    }
  }
  return blocks.sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0));
};

/** Half-edges as linked lists: half 2e leaves end a of edge e, half 2e + 1 leaves end b. */
function adjacency(nodeCount: number, edges: readonly Edge[]): { first: Int32Array; next: Int32Array } {
  const first = new Int32Array(nodeCount).fill(-1);
  const next = new Int32Array(edges.length * 2).fill(-1);
  for (let edge = edges.length - 1; edge >= 0; edge--) {
    const ends = edges[edge];
    if (!ends || ends.a === ends.b) continue;
    for (const [half, node] of [
      [2 * edge, ends.a],
      [2 * edge + 1, ends.b],
    ] as const) {
      next[half] = first[node] ?? -1;
      first[node] = half;
    }
  }
  return { first, next };
}
