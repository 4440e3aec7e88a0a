import { byId, type StationId } from "../board/ids.ts";
import type { StationKind } from "../board/station-kinds.ts";
import { nodeId } from "../wiring/buses.ts";
import type { CircuitModel } from "./model.ts";
import { oncePerModel } from "./once-per-model.ts";
import { separatorsOf } from "./separators.ts";

/** Accessories whose contacts or fuse can cut something off. */
const cutters: ReadonlySet<StationKind> = new Set(["fcu", "isolator", "cooker-control", "plate-switch"]);

/**
 * For every fixed appliance that line or neutral reaches the accessories that cut both off when their contacts are
 * opened, or their fuse is drawn, in the order of ids. A switch cuts the neutral only where it is a double-pole one.
 */
export const cutOffBy = oncePerModel((model): ReadonlyMap<StationId, StationId[]> => {
  const found = new Map<StationId, StationId[]>();
  for (const { id, kind } of model.stations.values()) {
    if (kind !== "appliance" || !model.used.has(id)) continue;
    const line = separatorsOf(model, "live")(nodeId(id, "L"));
    const neutral = separatorsOf(model, "neutral")(nodeId(id, "N"));
    const candidates = line ?? neutral;
    if (!candidates) continue;
    const list = candidates.filter((station) => {
      const by = model.stations.get(station);
      if (!by || !cutters.has(by.kind)) return false;
      if (by.kind === "plate-switch") return by.settings?.poles === 2;
      return neutral === undefined || neutral.includes(station);
    });
    found.set(id, list.sort(byId));
  }
  return found;
});

/** A double-pole switch of its own is a cooker's control too; the unit with a socket outlet is only the usual one. */
export const isCookerControl = (model: CircuitModel, id: StationId): boolean => {
  const kind = model.stations.get(id)?.kind;
  return kind === "cooker-control" || kind === "isolator";
};
