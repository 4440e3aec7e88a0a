import { cableVoltageDrop } from "./cable-voltage-drop.ts";

/**
 * Tabulated voltage drop in mV per ampere and metre, both conductors, at 70 °C (BS 7671:2018 Table 4D5).
 * Undefined for a size that is not in the table.
 */
export function voltageDropMvPerAM(csaMm2: number): number | undefined {
  return cableVoltageDrop.find((row) => row.csaMm2 === csaMm2)?.dropMvPerAM;
}
