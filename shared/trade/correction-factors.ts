import { ambientFactors } from "./ambient-factors.ts";
import { groupingFactors } from "./grouping-factors.ts";
import { insulationFactors } from "./insulation-factors.ts";

/**
 * Ca for an ambient temperature in °C (BS 7671:2018 Table 4B1). Between two rows the lower factor is taken, which
 * errs to the safe side; below 25 °C the 25 °C factor. Undefined above 60 °C, where the table ends.
 */
export function ambientFactor(ambientC: number): number | undefined {
  return ambientFactors.find((row) => ambientC <= row.ambientC)?.factor;
}

/**
 * Cg for a number of circuits that run together, this one counted (BS 7671:2018 Table 4C1). Between two rows the
 * lower factor is taken. Undefined below 1 and above 20, where the table ends.
 */
export function groupingFactor(circuits: number): number | undefined {
  if (!(circuits >= 1)) return undefined;
  return groupingFactors.find((row) => circuits <= row.circuits)?.factor;
}

/**
 * Ci for a length in mm totally surrounded by thermal insulation (BS 7671:2018 Table 52.2). 1 for none; between two
 * rows, and below the first, the lower factor is taken; 0.5 from 500 mm on. Undefined for a negative length.
 */
export function insulationFactor(lengthMm: number): number | undefined {
  if (!(lengthMm >= 0)) return undefined;
  if (lengthMm === 0) return 1;
  return (insulationFactors.find((row) => lengthMm <= row.lengthMm) ?? insulationFactors.at(-1))?.factor;
}
