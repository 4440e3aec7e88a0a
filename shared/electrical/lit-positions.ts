import type { StationId } from "../board/ids.ts";
import { nodeId, sourceLine } from "../wiring/buses.ts";
import { DisjointSets } from "../wiring/disjoint-sets.ts";
import type { Copper } from "./copper.ts";
import { isClosed } from "./wiring-network.ts";

/**
 * Positions of the switches in which as many lamps are lit as moving one switch after the other can light: where a
 * load on a lighting circuit is counted, all its lamps are on.
 */
export function litPositions(copper: Copper): Map<StationId, 0 | 1> {
  const positions = new Map<StationId, 0 | 1>();
  const several = copper.buses.switches.filter(
    (id) => (copper.stations.get(id)?.settings?.switching ?? "one-way") !== "one-way",
  );
  if (several.length === 0) return positions;
  const lamps = [...copper.stations.values()].flatMap(({ id, kind }) => {
    if (kind !== "luminaire" && kind !== "ceiling-rose") return [];
    const node = copper.nodeIndex.get(nodeId(id, kind === "luminaire" ? "L" : "SL"));
    return node === undefined ? [] : [node];
  });
  const source = copper.nodeIndex.get(sourceLine)!;
  const litCount = (): number => {
    const sets = new DisjointSets(copper.nodes.length);
    for (const { core, fromNode, toNode } of copper.conductors)
      if (core !== "earth") sets.join(fromNode, toNode);
    for (const link of copper.links) {
      if (link.conductor === "live" && isClosed(link, { positions })) sets.join(link.fromNode, link.toNode);
    }
    return lamps.filter((node) => sets.find(node) === sets.find(source)).length;
  };
  let most = litCount();
  for (const id of several) {
    positions.set(id, 0);
    const count = litCount();
    if (count > most) most = count;
    else positions.set(id, 1);
  }
  return positions;
}
