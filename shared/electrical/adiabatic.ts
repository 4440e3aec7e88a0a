import type { BreakerCurve } from "../trade/breaker-curves.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import type { DisconnectingDevice } from "../trade/maximum-zs.ts";
import { supply } from "../trade/supply.ts";
import { breakerBand } from "./device-band.ts";
import { fuseBand, tabulatedFuseOpeningS } from "./fuse-band.ts";
import { rcdOpening } from "./rcd-opening.ts";

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
 * from the RCD where that is sooner; the maker's figure or the RCD's, whichever is less. Where a circuit-breaker opens
 * at once the time says nothing and only its maker's figure will do. Undefined where nobody can say.
 */
export function faultEnergy(clearing: Clearing): (faultCurrentA: number) => number | undefined {
  const { letThroughA2s, rcdMa = 0 } = clearing;
  const latestS = latestOpening(clearing);
  return (faultCurrentA) => {
    if (letThroughA2s !== undefined)
      return Math.min(letThroughA2s, faultCurrentA ** 2 * rcdOpening(rcdMa, faultCurrentA).latestS);
    const deviceS = latestS(faultCurrentA);
    if (deviceS === undefined) return undefined;
    const clearingS = Math.min(deviceS, rcdOpening(rcdMa, faultCurrentA).latestS);
    return clearingS === Infinity ? undefined : faultCurrentA ** 2 * clearingS;
  };
}

/** Seconds by which the device has opened; undefined where it opens at once or nobody can say. */
function latestOpening({ device, ratingA }: Clearing): (currentA: number) => number | undefined {
  if (!isCurve(device) && device !== "BS 1362")
    return (currentA) => tabulatedFuseOpeningS(device, ratingA, currentA);
  const band = isCurve(device) ? breakerBand(device, ratingA) : fuseBand("BS 1362", ratingA);
  const atOnceA = band?.instantaneousFromA ?? Infinity;
  return (currentA) => (currentA >= atOnceA ? undefined : band?.opening(currentA).latestS);
}

function isCurve(device: DisconnectingDevice): device is BreakerCurve {
  return device === "B" || device === "C" || device === "D";
}
