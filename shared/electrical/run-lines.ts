import { conductorTemperature } from "../trade/conductor-temperature.ts";

/** Temperatures whose passing a run notes, in °C. */
export const runLinesC: readonly number[] = [
  conductorTemperature.longLifeC,
  conductorTemperature.faultLimitC,
];
