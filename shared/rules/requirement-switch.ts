import type { StationId } from "../board/ids.ts";
import { isSwitchedFcu } from "../circuit/defaults.ts";
import type { CircuitModel } from "../circuit/model.ts";
import { isOfAPair } from "../circuit/lamps.ts";
import { separatorsOf } from "../circuit/separators.ts";
import { isLightingPoint } from "../circuit/zone-kinds.ts";
import type { Station } from "../wiring/wiring.schema.ts";
import { nodeId, type NodeId } from "../wiring/buses.ts";

/**
 * The stations that one switch turns off, or that each have one of their own, with nothing else going off. A switch
 * is what `isolation` takes for one: a switched FCU, a double-pole switch or a control; for lights a switch in the
 * line does. With `by` only that station's switch counts.
 */
export function switchedAlone(
  model: CircuitModel,
  stations: readonly StationId[],
  by?: StationId,
): ReadonlySet<StationId> {
  const found = new Set<StationId>();
  const points = new Set(model.zones.flatMap((zone) => zone.points));
  const [line, neutral] = [separatorsOf(model, "live"), separatorsOf(model, "neutral")];
  const darkBy = new Map<StationId, StationId[]>();
  const goesDark = (id: StationId, by: StationId) => darkBy.set(by, [...(darkBy.get(by) ?? []), id]);
  for (const id of points)
    for (const switching of line(lineNode(model, id)) ?? [])
      if (!isOfAPair(model.stations.get(switching)) || !isLightingPoint(model, id)) goesDark(id, switching);
  // Line reaches a lamp past one of two-way switches by the other strapper: what counts is that it obeys.
  for (const { station, controlledBy, halfControlledBy } of model.lamps)
    for (const switching of controlledBy)
      if (isOfAPair(model.stations.get(switching)) && !halfControlledBy.includes(switching))
        goesDark(station, switching);
  for (const station of model.stations.values()) {
    if (!model.used.has(station.id) || !isSwitch(station)) continue;
    if (by !== undefined && by !== station.id) continue;
    // A unit that is fed at its load side goes dark by its own switch: it is the switch, nothing else that goes off.
    const dark = (darkBy.get(station.id) ?? []).filter((id) => id !== station.id);
    if (!dark.every((id) => stations.includes(id))) continue;
    const breaksBoth = (id: StationId): boolean =>
      station.kind === "plate-switch"
        ? station.settings?.poles === 2
        : neutral(neutralNode(model, id))?.includes(station.id) !== false;
    for (const id of dark) if (isLightingPoint(model, id) || breaksBoth(id)) found.add(id);
  }
  return found;
}

const isSwitch = (station: Station): boolean => {
  const { kind } = station;
  if (kind === "fcu") return isSwitchedFcu(station);
  return kind === "isolator" || kind === "cooker-control" || kind === "plate-switch";
};

const isTwoSided = ({ kind }: Pick<Station, "kind">): boolean =>
  kind === "fcu" || kind === "isolator" || kind === "cooker-control";

function lineNode(model: CircuitModel, id: StationId): NodeId {
  const lamp = model.lamps.find(({ station }) => station === id);
  const station = model.stations.get(id);
  return lamp?.live ?? nodeId(id, station && isTwoSided(station) ? "supply.L" : "L");
}

function neutralNode(model: CircuitModel, id: StationId): NodeId {
  const station = model.stations.get(id);
  return nodeId(id, station && isTwoSided(station) ? "supply.N" : "N");
}
