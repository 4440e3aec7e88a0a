import type { BreakerCurve } from "../trade/breaker-curves.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import type { DisconnectingDevice } from "../trade/maximum-zs.ts";
import { rcdLimits } from "../trade/rcd-limits.ts";
import { supply } from "../trade/supply.ts";
import { breakerBand, fuseBand, tabulatedFuseOpeningS } from "./device-band.ts";

/**
 * Least csa in mm² of a copper conductor in a cable that withstands an energy I²t in A²s: S >= sqrt(I²t) / k, with
 * k = 115 for 70 °C PVC (BS 7671:2018 543.1.3 and Table 54.3).
 */
export function leastCsaMm2(energyA2s: number): number {
  return Math.sqrt(energyA2s) / copperHeat.kInCableAsqrtSPerMm2;
}

/** What limits the energy of a fault to earth. */
export interface Clearing {
  device: DisconnectingDevice;
  ratingA: number;
  /** Let-through energy at this current, as the device's maker states it. */
  letThroughA2s?: number | undefined;
  /** Rated residual current of the RCD before it; 0 or left out where there is none. */
  rcdMa?: number | undefined;
}

/** Fault current in amperes for the adiabatic check: U0 / Zs without Cmin, since more current is the worse case. */
export const adiabaticCurrentA = (zsOhm: number): number => supply.nominalV / zsOhm;

/**
 * Most energy in A²s that a fault of a current may let through: I² t, t from the late side of the device's band, or
 * from the RCD where that is sooner; the maker's figure or the RCD's, whichever is less. Where a circuit-breaker opens at once the time says nothing and only its maker's
 * figure will do. Undefined where nobody can say.
 */
export function faultEnergy(clearing: Clearing): (faultCurrentA: number) => number | undefined {
  const { letThroughA2s, rcdMa = 0 } = clearing;
  const latestS = latestOpening(clearing);
  return (faultCurrentA) => {
    if (letThroughA2s !== undefined)
      return Math.min(letThroughA2s, faultCurrentA ** 2 * rcdOpeningS(rcdMa, faultCurrentA));
    const deviceS = latestS(faultCurrentA);
    if (deviceS === undefined) return undefined;
    const clearingS = Math.min(deviceS, rcdOpeningS(rcdMa, faultCurrentA));
    return clearingS === Infinity ? undefined : faultCurrentA ** 2 * clearingS;
  };
}

/**
 * Seconds by which an RCD has opened at a residual current, Infinity where none says that it does. A fault to earth
 * that the adiabatic check is about is many times the rated residual current, so the time of its product standard at
 * that multiple counts: the 300 ms at the rated current itself would call sound circuits too small. Above 30 mA it may
 * be of the time-delayed S type, which no setting says, so that one is taken. Beyond the current that every RCD
 * breaks it is not relied on, nor, as on TT with a poor electrode, below its rated current.
 */
function rcdOpeningS(rcdMa: number, residualA: number): number {
  const multiple = rcdMa > 0 ? residualA / (rcdMa / 1000) : 0;
  if (multiple < 1 || residualA > rcdLimits.leastBreakingA) return Infinity;
  const mayBeSelective = rcdMa > rcdLimits.mostRatedMa;
  const isFull = multiple >= rcdLimits.fullResponseMultiple;
  const { atRatedMostMs, atFiveTimesRatedMostMs, selectiveMostMs, selectiveAtFiveTimesMostMs } = rcdLimits;
  const openingMs = mayBeSelective
    ? isFull
      ? selectiveAtFiveTimesMostMs
      : selectiveMostMs
    : isFull
      ? atFiveTimesRatedMostMs
      : atRatedMostMs;
  return openingMs / 1000;
}

/** Seconds by which the device has opened; undefined where it opens at once or nobody can say. */
function latestOpening({ device, ratingA }: Clearing): (currentA: number) => number | undefined {
  if (!isCurve(device) && device !== "BS 1362")
    return (currentA) => tabulatedFuseOpeningS(device, ratingA, currentA);
  const band = isCurve(device) ? breakerBand(device, ratingA) : fuseBand(ratingA);
  const atOnceA = band?.instantaneousFromA ?? Infinity;
  return (currentA) => (currentA >= atOnceA ? undefined : band?.opening(currentA).latestS);
}

function isCurve(device: DisconnectingDevice): device is BreakerCurve {
  return device === "B" || device === "C" || device === "D";
}
