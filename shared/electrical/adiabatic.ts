import type { BreakerCurve } from "../trade/breaker-curves.ts";
import { copperHeat } from "../trade/copper-heat.ts";
import { type DisconnectingDevice, maximumZsOhm } from "../trade/maximum-zs.ts";
import { supply } from "../trade/supply.ts";
import { disconnectionLimits } from "../trade/disconnection-limits.ts";
import { breakerBand, fuseBand } from "./device-band.ts";

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
  /** The longest an RCD before it takes, in seconds; left out where there is none. */
  rcdS?: number | undefined;
}

/** Fault current in amperes for the adiabatic check: U0 / Zs without Cmin, since more current is the worse case. */
export const adiabaticCurrentA = (zsOhm: number): number => supply.nominalV / zsOhm;

/**
 * Most energy in A²s that a fault of a current may let through: I² t, t from the late side of the device's band, or
 * from the RCD where that is sooner. Where a circuit-breaker opens at once the time says nothing and only its maker's
 * figure will do. Undefined where nobody can say.
 */
export function faultEnergy(clearing: Clearing): (faultCurrentA: number) => number | undefined {
  const { letThroughA2s, rcdS = Infinity } = clearing;
  if (letThroughA2s !== undefined) return () => letThroughA2s;
  const latestS = latestOpening(clearing);
  return (faultCurrentA) => {
    const deviceS = latestS(faultCurrentA);
    if (deviceS === undefined) return undefined;
    const clearingS = Math.min(deviceS, rcdS);
    return clearingS === Infinity ? undefined : faultCurrentA ** 2 * clearingS;
  };
}

/** Seconds by which the device has opened; undefined where it opens at once or nobody can say. */
function latestOpening({ device, ratingA }: Clearing): (currentA: number) => number | undefined {
  if (isCurve(device) || device === "BS 1362") {
    const band = isCurve(device) ? breakerBand(device, ratingA) : fuseBand(ratingA);
    const atOnceA = band?.instantaneousFromA ?? Infinity;
    return (currentA) => (currentA >= atOnceA ? undefined : band?.opening(currentA).latestS);
  }
  // The other fuses have no gates here; their tabulated limits tell by when they have opened.
  const limits = [disconnectionLimits.tnFinalS, disconnectionLimits.tnOtherS].map((timeS) => ({
    timeS,
    limitOhm: maximumZsOhm(device, ratingA, timeS) ?? 0,
  }));
  return (currentA) => {
    const zsOhm = (supply.cMin * supply.nominalV) / currentA;
    return limits.find(({ limitOhm }) => zsOhm <= limitOhm)?.timeS;
  };
}

function isCurve(device: DisconnectingDevice): device is BreakerCurve {
  return device === "B" || device === "C" || device === "D";
}
