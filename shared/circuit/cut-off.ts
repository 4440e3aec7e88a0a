import type { RoleClass, StationId } from "../board/ids.ts";
import type { StationKind } from "../board/station-kinds.ts";
import { oncePerModel } from "./once-per-model.ts";
import { type InternalLink, type NodeId, nodeId, sourceNode } from "../wiring/buses.ts";
import type { CircuitModel } from "./model.ts";

/** Accessories whose contacts or fuse can cut something off. */
const cutters: ReadonlySet<StationKind> = new Set(["fcu", "isolator", "cooker-control", "plate-switch"]);

/**
 * For every fixed appliance in use the accessories that cut its line and neutral off when their contacts are opened,
 * or their fuse is drawn, in the order of ids. A switch cuts the neutral only where it is a double-pole one.
 */
export const cutOffBy = oncePerModel((model): ReadonlyMap<StationId, StationId[]> => {
  const appliances = [...model.stations.values()].filter(
    ({ id, kind }) => kind === "appliance" && model.used.has(id),
  );
  const found = new Map(appliances.map(({ id }) => [id, [] as StationId[]]));
  if (appliances.length === 0) return found;
  const line = feedOf(model, "live");
  const neutral = feedOf(model, "neutral");
  for (const { id, kind, settings } of model.stations.values()) {
    if (!cutters.has(kind) || !model.used.has(id)) continue;
    const cutsNeutral = kind !== "plate-switch" || settings?.poles === 2;
    const lineLeft = line(id);
    const neutralLeft = kind === "plate-switch" ? undefined : neutral(id);
    for (const [appliance, list] of found) {
      const isCut = !lineLeft.has(nodeId(appliance, "L")) && !neutralLeft?.has(nodeId(appliance, "N"));
      if (isCut && cutsNeutral) list.push(id);
    }
  }
  return found;
});

/** A double-pole switch of its own is a cooker's control too; the unit with a socket outlet is only the usual one. */
export const isCookerControl = (model: CircuitModel, id: StationId): boolean => {
  const kind = model.stations.get(id)?.kind;
  return kind === "cooker-control" || kind === "isolator";
};

/**
 * The nodes a class of conductor still reaches from the supply when all links of one station stand open, or of none
 * where none is named.
 */
export function feedOf(
  model: CircuitModel,
  conductor: RoleClass,
): (open: StationId | undefined) => ReadonlySet<NodeId> {
  const neighbours = new Map<NodeId, { to: NodeId; by?: StationId }[]>();
  const join = (a: NodeId, b: NodeId, by?: StationId): void => {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const edge = by === undefined ? { to } : { to, by };
      const known = neighbours.get(from);
      if (known) known.push(edge);
      else neighbours.set(from, [edge]);
    }
  };
  for (const core of model.conductors) if (core.class === conductor) join(core.fromNode, core.toNode);
  const isOf = (link: InternalLink) => link.conductor === conductor;
  for (const link of model.buses.links.filter(isOf)) join(link.from, link.to, link.station);
  return (open) => {
    const reached = new Set<NodeId>([sourceNode(conductor)]);
    for (const node of reached)
      for (const { to, by } of neighbours.get(node) ?? [])
        if (by === undefined || by !== open) reached.add(to);
    return reached;
  };
}
