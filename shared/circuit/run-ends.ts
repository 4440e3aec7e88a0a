import { type RoleClass, roleClasses, type StationId } from "../board/ids.ts";
import type { Side } from "../board/station-kinds.ts";
import { nodeId, type NodeId } from "../wiring/buses.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import type { CableModel, Zone } from "./model.ts";
import type { RunEnds } from "./shape.ts";

/**
 * Where the runs of a zone's shape end: at the line bus of each station. Switched and strap cables are no part of
 * the shape; the two sides of an isolator or control are one, those of a connection unit are not.
 */
export function runEnds(
  zone: Zone,
  cables: readonly CableModel[],
  stations: ReadonlyMap<StationId, Station>,
  zoneOfNode: (node: NodeId) => Zone | undefined,
): RunEnds[] {
  return cables.flatMap((cable): RunEnds[] => {
    const a = shapeNode(cable.fromLine, cable.fromSide, stations.get(cable.fromStation));
    const b = shapeNode(cable.toLine, cable.toSide, stations.get(cable.toStation));
    if (!a || !b || a === b || zoneOfNode(a) !== zone || zoneOfNode(b) !== zone) return [];
    const classes = classesOf(cable);
    // A lone crossed lead is a fault of its own and no way for a circuit to go.
    if (classes.size === 0 && cable.conductors.length < 2) return [];
    return [{ cable, a, b, classes }];
  });
}

/** Every set of classes that a cable can carry straight through; by a bit a class, so that none is made twice. */
const classSets: readonly ReadonlySet<RoleClass>[] = Array.from(
  { length: 2 ** roleClasses.length },
  (_, bits) => new Set(roleClasses.filter((_, bit) => bits & (1 << bit))),
);

function classesOf({ conductors }: CableModel): ReadonlySet<RoleClass> {
  let bits = 0;
  for (const { class: conductor } of conductors)
    if (conductor !== "crossed") bits |= 1 << roleClasses.indexOf(conductor);
  return classSets[bits]!;
}

function shapeNode(line: NodeId, side: Side, station: Station | undefined): NodeId | undefined {
  if (!station || (side !== "feed" && side !== "supply" && side !== "load" && side !== "switch"))
    return undefined;
  if (station.kind === "isolator" || station.kind === "cooker-control") return nodeId(station.id, "supply.L");
  // The straps of a two-way switch are switched already.
  return line.endsWith("/strap1") || line.endsWith("/strap2") ? undefined : line;
}
