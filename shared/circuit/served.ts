import type { StationId } from "../board/ids.ts";
import { nodeId } from "../wiring/buses.ts";
import { isReachedBy, neededBuses } from "./losses.ts";
import type { CircuitModel } from "./model.ts";
import { switchedNeutrals } from "./switched-neutrals.ts";

/** A lamp with its switch in the neutral does light: what is wrong with it is said by `switched-neutral`. */
const hasSwitchedNeutral = (model: CircuitModel, id: StationId): boolean =>
  switchedNeutrals(model).some(({ lamps }) => lamps.includes(id));

/**
 * True where current can be taken: line and neutral reach the station in some position of the switches, and a
 * lamp lights in one. A junction box or a switch is served when line reaches it.
 */
export const isServed = (model: CircuitModel, id: StationId): boolean => {
  const station = model.stations.get(id);
  if (!station) return false;
  const lamp = model.lamps.find((candidate) => candidate.station === id);
  if (station.kind === "luminaire" || station.kind === "ceiling-rose")
    return lamp !== undefined && (lamp.isLitSometimes || hasSwitchedNeutral(model, id));
  if (station.kind === "junction-box" || station.kind === "way")
    return model.used.has(id) && model.reachOf(nodeId(id, "L")).sometimes.length > 0;
  const needsNeutral = neededBuses(station, "neutral").length > 0;
  return isReachedBy(model, station, "live") && (!needsNeutral || isReachedBy(model, station, "neutral"));
};
