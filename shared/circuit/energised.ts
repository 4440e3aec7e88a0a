import { type NodeId, nodeId } from "../wiring/buses.ts";
import { DisjointSets } from "./disjoint-sets.ts";
import type { CircuitModel } from "./model.ts";
import { oncePerModel } from "./once-per-model.ts";

/**
 * Whether line or neutral of some way reaches a node, by whatever conductors: a crossed one brings it as well as a
 * straight one.
 */
export const isEnergised = (model: CircuitModel, node: NodeId): boolean => energisedGroups(model)(node);

const energisedGroups = oncePerModel((model): ((node: NodeId) => boolean) => {
  const places = new Map<number, number>();
  const placeOf = (node: NodeId): number => {
    const group = model.groupOf(node);
    const place = places.get(group) ?? places.size;
    places.set(group, place);
    return place;
  };
  const ends = model.crossed.map(({ fromNode, toNode }) => [placeOf(fromNode), placeOf(toNode)] as const);
  const heads = [...model.stations.values()].flatMap(({ id, kind }) =>
    kind === "way" ? [placeOf(nodeId(id, "L")), placeOf(nodeId(id, "N"))] : [],
  );
  const sets = new DisjointSets(places.size);
  for (const [a, b] of ends) sets.join(a, b);
  const live = new Set(heads.map((head) => sets.find(head)));
  return (node) => {
    const place = places.get(model.groupOf(node));
    return place !== undefined && live.has(sets.find(place));
  };
});
