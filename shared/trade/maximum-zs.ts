import { type BreakerCurve, breakerCurves } from "./breaker-curves.ts";
import { circuitBreakerZs } from "./circuit-breaker-zs.ts";
import { type FuseStandard, fuseZs } from "./fuse-zs.ts";
import { supply } from "./supply.ts";

/** A device that can disconnect a fault: a circuit-breaker or RCBO by its type, or a fuse by its standard. */
export type DisconnectingDevice = BreakerCurve | FuseStandard;

/**
 * Maximum earth fault loop impedance in ohms, conductors hot, for disconnection within a time in seconds.
 *
 * Circuit-breakers (BS 7671:2018 Table 41.3): their limit is the instantaneous region, under 0.1 s, so it is the
 * same for 0.2, 0.4 and 5 s; a rating without a row follows 0.95 x 230 V / Ia (411.4.4), to two decimals. Undefined
 * below 0.1 s. Fuses (Tables 41.2, 41.4): the slowest tabulated time within the one asked for. A BS 1362 fuse below
 * 13 A without a row takes the 13 A one, which is stricter; any other fuse without a row, and any time below 0.4 s,
 * is undefined.
 */
export function maximumZsOhm(
  device: DisconnectingDevice,
  ratingA: number,
  disconnectionS: number,
): number | undefined {
  if (device === "B" || device === "C" || device === "D")
    return breakerZsOhm(device, ratingA, disconnectionS);
  const rows = fuseZs
    .filter((row) => row.fuse === device && row.disconnectionS <= disconnectionS)
    .sort((a, b) => b.disconnectionS - a.disconnectionS);
  const ownRow = rows.find((row) => row.ratingA === ratingA);
  if (ownRow || device !== "BS 1362" || !(ratingA > 0 && ratingA < 13)) return ownRow?.maximumZsOhm;
  return rows.find((row) => row.ratingA === 13)?.maximumZsOhm;
}

function breakerZsOhm(curve: BreakerCurve, ratingA: number, disconnectionS: number): number | undefined {
  const band = breakerCurves.find((row) => row.curve === curve);
  if (!band || !(ratingA > 0) || disconnectionS < band.instantaneousS) return undefined;
  const row = circuitBreakerZs.find(
    (candidate) => candidate.curve === curve && candidate.ratingA === ratingA,
  );
  if (row) return row.maximumZsOhm;
  return Math.round((100 * supply.cMin * supply.nominalV) / (band.tripsMultiple * ratingA)) / 100;
}
