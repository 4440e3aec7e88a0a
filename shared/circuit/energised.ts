import { type NodeId, nodeId } from "../wiring/buses.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { CircuitModel } from "./model.ts";
import { oncePerModel } from "./once-per-model.ts";

/**
 * Whether line or neutral of some way reaches a node, by whatever conductors: a crossed one brings it as well as a
 * straight one.
 */
export const isEnergised = (model: CircuitModel, node: NodeId): boolean => energisedGroups(model)(node);

const energisedGroups = oncePerModel((model): ((node: NodeId) => boolean) => {
  const indices = new Map<number, number>();
  const indexOf = (node: NodeId): number => {
    const group = model.groupOf(node);
    const index = indices.get(group) ?? indices.size;
    indices.set(group, index);
    return index;
  };
  const ends = model.crossed.map(({ fromNode, toNode }) => [indexOf(fromNode), indexOf(toNode)] as const);
  const heads = [...model.stations.values()].flatMap(({ id, kind }) =>
    kind === "way" ? [indexOf(nodeId(id, "L")), indexOf(nodeId(id, "N"))] : [],
  );
  const sets = new DisjointSets(indices.size);
  for (const [a, b] of ends) sets.join(a, b);
  const live = new Set(heads.map((head) => sets.find(head)));
  return (node) => {
    const index = indices.get(model.groupOf(node));
    return index !== undefined && live.has(sets.find(index));
  };
});
