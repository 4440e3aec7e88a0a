import type { ConductorId, StationId } from "../board/ids.ts";
import { nodeId } from "../wiring/buses.ts";
import type { CircuitModel } from "./model.ts";
import { switchedNeutrals } from "./switched-neutrals.ts";

/** A ceiling rose with line, whose lamp no switched line comes back to. */
export interface DarkRose {
  rose: StationId;
  /** Cores of the switch drop that are missing, or the crossed conductors in their place; none where no switch is. */
  cores: ConductorId[];
}

/** Roses that line reaches and whose switched line terminal it reaches in no position of the switches. */
export const darkRoses = (model: CircuitModel): DarkRose[] => {
  const dark = model.lamps.filter(
    ({ station, live }) =>
      model.stations.get(station)?.kind === "ceiling-rose" &&
      model.reachOf(live).sometimes.length === 0 &&
      model.reachOf(nodeId(station, "L")).sometimes.length > 0,
  );
  if (dark.length === 0) return [];
  // A lamp whose neutral is switched lights: what is wrong there is said by its own rule.
  const switched = new Set(switchedNeutrals(model).flatMap(({ lamps }) => lamps));
  return dark
    .filter(({ station }) => !switched.has(station))
    .map(({ station: rose }) => ({ rose, cores: dropCores(model, rose) }));
};

/** Missing live cores of the cables at the rose's switch terminals and of those from their far ends on. */
function dropCores(model: CircuitModel, rose: StationId): ConductorId[] {
  const reached = new Set<StationId>([rose]);
  const cores = new Set<ConductorId>();
  for (const at of reached)
    for (const { fromStation, toStation, fromSide, toSide, missing } of model.cables) {
      if (fromStation !== at && toStation !== at) continue;
      const isDrop = at !== rose || (fromStation === rose ? fromSide : toSide) === "switch";
      const other = fromStation === at ? toStation : fromStation;
      if (!isDrop || model.stations.get(other)?.kind !== "plate-switch") continue;
      reached.add(other);
      for (const { id, class: lost, crossedBy } of missing)
        if (lost === "live") for (const core of crossedBy.length > 0 ? crossedBy : [id]) cores.add(core);
    }
  return [...cores];
}
