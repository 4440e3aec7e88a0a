import type { StationId } from "../board/ids.ts";
import { applianceLimits } from "../trade/appliance-limits.ts";
import type { CircuitModel } from "./model.ts";
import { statedLoadW } from "./point-demand.ts";

/** Why a fixed appliance wants a circuit of its own. */
export type OwnCircuitWant = "cooking" | "water-heater" | "shower";

/** True for a cooker, a hob or an oven. */
export const isCooking = (model: CircuitModel, id: StationId): boolean => {
  const appliance = model.stations.get(id)?.settings?.appliance;
  return appliance === "cooker" || appliance === "hob" || appliance === "oven";
};

/**
 * Whether a fixed appliance wants a circuit of its own: a shower, a cooking appliance but for one that is stated not to
 * take more than 2 kW, a water heater over 15 l (one of unstated litres counts so above 2 kW). Otherwise false, or
 * the field that keeps it from being known.
 */
export const wantsOwnCircuit = (
  model: CircuitModel,
  id: StationId,
): OwnCircuitWant | false | { lacks: string } => {
  const station = model.stations.get(id);
  if (station?.kind !== "appliance") return false;
  const { appliance, litres } = station.settings ?? {};
  const loadW = statedLoadW(model, id);
  switch (appliance) {
    case undefined:
      return { lacks: "appliance" };
    case "shower":
      return "shower";
    case "cooker":
    case "hob":
    case "oven":
      return loadW === undefined || loadW > applianceLimits.ownCircuitCookingOverW ? "cooking" : false;
    case "water-heater": {
      if (litres !== undefined) return litres > applianceLimits.ownCircuitOverLitres ? "water-heater" : false;
      if (loadW === undefined) return { lacks: "powerW" };
      return loadW > applianceLimits.ownCircuitHeaterOverW ? "water-heater" : false;
    }
    default:
      return false;
  }
};
