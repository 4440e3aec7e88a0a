import type { Source } from "./source.ts";

/**
 * Each is the reciprocal of the factor of IEC 60228 to 20 °C, as printed at
 * https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html
 */
const source: Source = {
  kind: "guidance",
  document: "On-Site Guide",
  clause: "Table I2, ambient at the time of the test",
  checked: "recomputed",
};

/** Resistance at the temperature of the test over resistance at 20 °C. */
export const testTemperatureFactors: readonly { ambientC: number; factor: number; source: Source }[] = [
  { ambientC: 5, factor: 0.94, source },
  { ambientC: 10, factor: 0.96, source },
  { ambientC: 15, factor: 0.98, source },
  { ambientC: 20, factor: 1.0, source },
  { ambientC: 25, factor: 1.02, source },
];
