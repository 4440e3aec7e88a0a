import { cableOverallSizes } from "../trade/cable-overall-sizes.ts";
import { installedCapacityA, type Installation } from "../trade/capacity.ts";
import { conductorTemperature } from "../trade/conductor-temperature.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import { assumptions } from "../trade/assumptions.ts";
import { usualCpcCsaMm2 } from "../trade/resistance.ts";

/** Line and neutral carry the current; the protective conductor does not. */
const loadedCores = 2;

/** What one metre of cable does with heat. */
export interface CableHeat {
  /** Of one loaded core at 20 °C. */
  resistance20OhmPerM: number;
  /** From the conductors to the air around; Infinity would be a cable that keeps all its heat. */
  thermalResistanceKMPerW: number;
  /** The loaded cores' copper alone: the soonest the conductors can be hot. */
  earlyHeatJPerKM: number;
  /** Copper of all cores and the plastic round them: the latest. */
  lateHeatJPerKM: number;
}

export type Bound = "early" | "late";

/**
 * Heat model of flat twin-and-earth as it is run. Rth follows from Iz with grouping and insulation but without Ca:
 * at that current the conductors settle at 70 °C in air of 30 °C (BS 7671:2018 Table 4D5). R20 = rho20 / csa, heat of
 * copper from IEC 60949, of PVC and the overall size of the cable from memory. Undefined for a size or a way of
 * running that has no row.
 */
export function cableHeat(
  installation: Omit<Installation, "ambientC">,
  cpcCsaMm2 = usualCpcCsaMm2(installation.csaMm2),
): CableHeat | undefined {
  const { csaMm2 } = installation;
  const capacityA = installedCapacityA({ ...installation, ambientC: assumptions.ambientC });
  const overall = cableOverallSizes.find((row) => row.csaMm2 === csaMm2);
  if (capacityA === undefined || overall === undefined || cpcCsaMm2 === undefined) return undefined;
  const resistance20OhmPerM = copperHeat.rho20OhmM / (csaMm2 * 1e-6);
  const { longLifeC } = conductorTemperature;
  const heatW = loadedCores * capacityA ** 2 * resistance20OhmPerM * warmFactor(longLifeC);
  const { widthMm, thicknessMm } = overall;
  const overallMm2 = thicknessMm * (widthMm - thicknessMm) + (Math.PI / 4) * thicknessMm ** 2;
  const copperMm2 = loadedCores * csaMm2 + cpcCsaMm2;
  // A metre of 1 mm² is 1 cm³.
  return {
    resistance20OhmPerM,
    thermalResistanceKMPerW: (longLifeC - assumptions.ambientC) / heatW,
    earlyHeatJPerKM: loadedCores * csaMm2 * copperHeat.copperHeatJPerKCm3,
    lateHeatJPerKM:
      copperMm2 * copperHeat.copperHeatJPerKCm3 +
      Math.max(0, overallMm2 - copperMm2) * copperHeat.pvcHeatJPerKCm3,
  };
}

export interface Heating {
  /** In each loaded core; where line and neutral differ, their root mean square. */
  currentA: number;
  ambientC: number;
}

/**
 * Conductor temperature in °C after `durationS` of a constant current, from `startC`. Exact solution of
 * C dT/dt = n I² R20 (1 + alpha (T - 20)) - (T - Ta) / Rth, which is linear in T.
 */
export function temperatureAfterC(
  heat: CableHeat,
  bound: Bound,
  { currentA, ambientC }: Heating,
  startC: number,
  durationS: number,
): number {
  const heatJPerKM = bound === "early" ? heat.earlyHeatJPerKM : heat.lateHeatJPerKM;
  const { risePerS, growthPerS } = slope(heat, heatJPerKM, { currentA, ambientC }, startC);
  const exponent = growthPerS * durationS;
  // Near nought the exact form loses its digits: (e^x - 1) / x -> 1 + x / 2.
  const factor =
    Math.abs(exponent) < 1e-9 ? durationS * (1 + exponent / 2) : Math.expm1(exponent) / growthPerS;
  return startC + risePerS * factor;
}

/**
 * Where the temperature in °C settles at a constant current. Infinity where heat comes faster than it can leave at
 * any temperature: resistance rises with temperature, so such a cable never settles.
 */
export function settledTemperatureC(heat: CableHeat, { currentA, ambientC }: Heating): number {
  const { risePerS, growthPerS } = slope(heat, 1, { currentA, ambientC }, ambientC);
  if (currentA === 0) return ambientC;
  return growthPerS < 0 ? ambientC - risePerS / growthPerS : Infinity;
}

/** Seconds of a constant current until the conductors reach a temperature above `startC`; Infinity if they never do. */
export function timeToReachS(
  heat: CableHeat,
  bound: Bound,
  { currentA, ambientC }: Heating,
  startC: number,
  reachC: number,
): number {
  if (reachC <= startC) return 0;
  const heatJPerKM = bound === "early" ? heat.earlyHeatJPerKM : heat.lateHeatJPerKM;
  const { risePerS, growthPerS } = slope(heat, heatJPerKM, { currentA, ambientC }, startC);
  if (risePerS <= 0) return Infinity;
  const reached = (growthPerS * (reachC - startC)) / risePerS;
  if (reached <= -1) return Infinity;
  return Math.abs(reached) < 1e-9 ? (reachC - startC) / risePerS : Math.log1p(reached) / growthPerS;
}

/** Rate of change at `fromC`, and how that rate grows per kelvin. */
function slope(
  heat: CableHeat,
  heatJPerKM: number,
  { currentA, ambientC }: Heating,
  fromC: number,
): { risePerS: number; growthPerS: number } {
  const wattPerM = loadedCores * currentA ** 2 * heat.resistance20OhmPerM;
  const lossPerK = 1 / heat.thermalResistanceKMPerW;
  return {
    risePerS: (wattPerM * warmFactor(fromC) - (fromC - ambientC) * lossPerK) / heatJPerKM,
    growthPerS: (wattPerM * copperHeat.alphaPerC - lossPerK) / heatJPerKM,
  };
}

function warmFactor(temperatureC: number): number {
  return 1 + copperHeat.alphaPerC * (temperatureC - conductorTemperature.tabulatedAtC);
}
