import { breakerGates } from "../trade/breaker-gates.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { overloadLimits } from "../trade/overload-limits.ts";
import { type CableHeat, settledTemperatureC, temperatureAfterC } from "./heat.ts";

/**
 * Above 70 °C is not at once a fault: between In and 1.45 In the standard accepts up to an hour of it, because no
 * device can tell so little too much from a full load. It costs life, and is drawn as a zone of its own.
 */
export interface AcceptedZone {
  fromC: number;
  /** What the conductors reach by the end of it, at the soonest. */
  toC: number;
  forS: number;
  toCurrentA: number;
}

/** How warm counts as what. `fault` is above 160 °C, the limit under fault. */
export type HeatState = "within" | "accepted" | "beyond" | "fault";

/** The accepted zone of a cable behind a device (BS 7671 433.1.1: I2 <= 1.45 Iz; BS EN 60898-1 test b: 1 h). */
export function acceptedZone(heat: CableHeat, deviceRatingA: number, ambientC: number): AcceptedZone {
  const gate = breakerGates.find((row) => row.test === "b" && deviceRatingA <= row.toRatingA);
  const forS = gate?.latestS ?? 0;
  const toCurrentA = overloadLimits.operatingMultiple * deviceRatingA;
  const startC = settledTemperatureC(heat, { currentA: deviceRatingA, ambientC });
  const { longLifeC } = conductorTemperature;
  // From a settled full load, or from 70 °C where the cable would not settle below that.
  const fromSettledC = Math.min(startC, longLifeC);
  const toC = temperatureAfterC(heat, "early", { currentA: toCurrentA, ambientC }, fromSettledC, forS);
  // A cable that never settles would be taken beyond any temperature there is.
  return { fromC: longLifeC, toC: Math.min(copperHeat.meltsAtC, Math.max(longLifeC, toC)), forS, toCurrentA };
}

/** Sorts a temperature in °C; `aboveLongLifeS` is how long the conductors have been above 70 °C. */
export function heatState(
  temperatureC: number,
  currentA: number,
  aboveLongLifeS: number,
  zone: AcceptedZone,
): HeatState {
  if (temperatureC > conductorTemperature.faultLimitC) return "fault";
  // A hair above the line by rounding is on the line.
  if (temperatureC <= zone.fromC + 1e-6) return "within";
  const isAccepted =
    temperatureC <= zone.toC + 1e-6 && currentA <= zone.toCurrentA + 1e-9 && aboveLongLifeS <= zone.forS;
  return isAccepted ? "accepted" : "beyond";
}
