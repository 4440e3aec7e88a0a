import { breakerCurves, type BreakerCurve } from "../trade/breaker-curves.ts";
import { breakerGates } from "../trade/breaker-gates.ts";
import { fuseGates } from "../trade/fuse-gates.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { type FuseStandard, fuseZs } from "../trade/fuse-zs.ts";
import { supply } from "../trade/supply.ts";

/** When a device opens at a constant current, from cold: never before the one, by the other at the latest. */
export interface OpeningTime {
  /** Infinity where it must hold. */
  earliestS: number;
  /** Infinity where nothing says that it must ever open. */
  latestS: number;
}

/** The band of a device between the gates of its product standard. */
export interface DeviceBand {
  ratingA: number;
  /** Up to here the device must hold. */
  holdsToA: number;
  /** From here on it opens at once, without thermal delay; undefined for a fuse. */
  instantaneousFromA?: number;
  opening(currentA: number): OpeningTime;
}

interface Gate {
  currentA: number;
  timeS: number;
}

/**
 * Band of a BS EN 60898 or 61009 device at 30 °C (BS EN 60898-1 Table 7). Late side: 1 h at 1.45 In, 60 s (above 32 A
 * 120 s) at 2.55 In, from there constant I²t up to 5 (B), 10 (C), 20 (D) In, then under 0.1 s. Early side: 1 h at
 * 1.13 In, 1 s at 2.55 In, not below 0.1 s until 3, 5, 10 In, instantaneous above. Between two gates a straight line
 * on log-log paper: our reading, the standard gives the gates alone. Undefined for a rating outside the standard.
 */
export function breakerBand(curve: BreakerCurve, ratingA: number): DeviceBand | undefined {
  const shape = breakerCurves.find((row) => row.curve === curve);
  const [holds, trips, thermal] = (["a", "b", "c"] as const).map((test) =>
    breakerGates.find((row) => row.test === test && ratingA > row.aboveRatingA && ratingA <= row.toRatingA),
  );
  if (!shape || !holds?.earliestS || !trips?.latestS || !thermal?.earliestS || !thermal.latestS)
    return undefined;
  const early = [
    { currentA: holds.multiple * ratingA, timeS: holds.earliestS },
    { currentA: thermal.multiple * ratingA, timeS: thermal.earliestS },
  ];
  const late = [
    { currentA: trips.multiple * ratingA, timeS: trips.latestS },
    { currentA: thermal.multiple * ratingA, timeS: thermal.latestS },
  ];
  const heldBelowA = shape.holdsMultiple * ratingA;
  const instantaneousFromA = shape.tripsMultiple * ratingA;
  return {
    ratingA,
    holdsToA: early[0]!.currentA,
    instantaneousFromA,
    opening: (currentA) => ({
      earliestS: currentA > heldBelowA ? 0 : Math.max(shape.instantaneousS, timeOnGates(early, currentA)),
      latestS: currentA >= instantaneousFromA ? shape.instantaneousS : timeOnGates(late, currentA),
    }),
  };
}

/**
 * Band of a BS 1362 cartridge fuse from its gates; it holds 1.6 In and opens at 1.9 In within 30 minutes. Between
 * gates a straight line on log-log paper, beyond the last constant I²t: our reading. Undefined for a rating that has
 * no gate in the standard, which is every one but 3 A and 13 A.
 */
export function fuseBand(ratingA: number): DeviceBand | undefined {
  const rows = fuseGates.filter((row) => row.ratingA === ratingA);
  if (rows.length === 0) return undefined;
  const holdsToA = fuseLimits.holdsMultiple * ratingA;
  const early: Gate[] = [
    { currentA: holdsToA, timeS: fuseLimits.conventionalS },
    ...rows.flatMap(({ currentA, earliestS }) => (earliestS ? [{ currentA, timeS: earliestS }] : [])),
  ];
  const late: Gate[] = [
    { currentA: fuseLimits.opensMultiple * ratingA, timeS: fuseLimits.conventionalS },
    ...rows.map(({ currentA, latestS }) => ({ currentA, timeS: latestS })),
  ];
  return {
    ratingA,
    holdsToA,
    opening: (currentA) => ({
      earliestS: timeOnGates(early, currentA),
      latestS: timeOnGates(late, currentA),
    }),
  };
}

/**
 * Seconds by which a BS 3036 or BS 88-3 fuse has opened, from the times that the tables of its loop impedance stand for
 * (BS 7671:2018 Tables 41.2 and 41.4: Ia = 0.95 x 230 V / Zs). Between two a straight line on log-log paper, beyond the
 * last constant I²t: a fuse is never slower there, for its curve only gets steeper towards small currents. Infinity
 * below the first; undefined for a rating without a row.
 */
export function tabulatedFuseOpeningS(
  fuse: FuseStandard,
  ratingA: number,
  currentA: number,
): number | undefined {
  const gates = fuseZs
    .filter((row) => row.fuse === fuse && row.ratingA === ratingA)
    .map(({ maximumZsOhm, disconnectionS }): Gate => ({
      currentA: (supply.cMin * supply.nominalV) / maximumZsOhm,
      timeS: disconnectionS,
    }))
    .sort((a, b) => a.currentA - b.currentA);
  return gates.length === 0 ? undefined : timeOnGates(gates, currentA);
}

/** Time on a line of gates: never below the first, log-log between two, constant I²t beyond the last. */
function timeOnGates(gates: readonly Gate[], currentA: number): number {
  const first = gates[0]!;
  // At a holding gate the device holds; at an opening gate it opens: the gate itself belongs to the line.
  if (currentA < first.currentA) return Infinity;
  const above = gates.findIndex((gate) => gate.currentA >= currentA);
  if (above === 0) return first.timeS;
  if (above > 0) {
    const low = gates[above - 1]!;
    const high = gates[above]!;
    const part = Math.log(currentA / low.currentA) / Math.log(high.currentA / low.currentA);
    return low.timeS * (high.timeS / low.timeS) ** part;
  }
  const last = gates.at(-1)!;
  return last.timeS * (last.currentA / currentA) ** 2;
}
