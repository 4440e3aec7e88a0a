import { cableMakeUp } from "./cable-make-up.ts";
import { conductorTemperature } from "./conductor-temperature.ts";
import { copperResistance } from "./copper-resistance.ts";

/**
 * Resistance of one copper conductor in mΩ/m (BS EN 60228 maximum at 20 °C, x (1 + 0.004 (T - 20)) at any other
 * temperature in °C). Undefined for a size that is not in the table.
 */
export function copperResistanceMilliohmPerM(csaMm2: number, temperatureC = 20): number | undefined {
  const row = copperResistance.find((candidate) => candidate.csaMm2 === csaMm2);
  return row && row.resistanceMilliohmPerM * resistanceFactor(temperatureC);
}

/** Resistance at a temperature in °C over resistance at 20 °C: 1 + 0.004 (T - 20), 1.20 at 70 °C. */
export function resistanceFactor(temperatureC: number): number {
  const { resistanceCoefficientPerC, tabulatedAtC } = conductorTemperature;
  return 1 + resistanceCoefficientPerC * (temperatureC - tabulatedAtC);
}

/** Size in mm² of the protective conductor that flat twin-and-earth of this size is made with (BS 6004). */
export function usualCpcCsaMm2(csaMm2: number): number | undefined {
  return cableMakeUp.find((row) => row.csaMm2 === csaMm2)?.cpcCsaMm2;
}
