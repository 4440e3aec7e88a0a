import { cableCapacity } from "./cable-capacity.ts";
import { ambientFactor, groupingFactor, insulationFactor } from "./correction-factors.ts";
import type { ReferenceMethod } from "./reference-method.ts";

/**
 * Tabulated current-carrying capacity of flat twin-and-earth at 30 °C, ungrouped, in amperes (BS 7671:2018
 * Table 4D5). Undefined for a size that is not in the table.
 */
export function tabulatedCapacityA(csaMm2: number, method: ReferenceMethod): number | undefined {
  return cableCapacity.find((row) => row.csaMm2 === csaMm2 && row.method === method)?.capacityA;
}

export type Installation = {
  csaMm2: number;
  method: ReferenceMethod;
  /** Air around the cable, °C; 30 when not given. */
  ambientC?: number | undefined;
  /** Circuits that run together, this one counted; 1 when not given. */
  groupedCircuits?: number | undefined;
  /** Length of the run totally surrounded by thermal insulation, mm; 0 when not given. */
  insulationMm?: number | undefined;
};

/** Iz = It x Ca x Cg x Ci, in amperes. Undefined where the size or a factor is outside its table. */
export function installedCapacityA(installation: Installation): number | undefined {
  const { csaMm2, method, ambientC = 30, groupedCircuits = 1, insulationMm = 0 } = installation;
  const tabulatedA = tabulatedCapacityA(csaMm2, method);
  const ca = ambientFactor(ambientC);
  const cg = groupingFactor(groupedCircuits);
  // Methods A and 100 to 103 already are cables in insulation: Ci on top would count it twice.
  const ci = method === "C" ? insulationFactor(insulationMm) : 1;
  if (tabulatedA === undefined || ca === undefined || cg === undefined || ci === undefined) return undefined;
  return tabulatedA * ca * cg * ci;
}
