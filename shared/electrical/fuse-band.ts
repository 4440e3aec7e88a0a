import { fuseFusing } from "../trade/fuse-fusing.ts";
import { fuseGates } from "../trade/fuse-gates.ts";
import { fuseLimits } from "../trade/fuse-limits.ts";
import { type FuseStandard, fuseZs } from "../trade/fuse-zs.ts";
import { supply } from "../trade/supply.ts";
import type { DeviceBand } from "./opening-time.ts";
import { type Gate, timeOnGates } from "./gate-line.ts";

type Tabulated = Exclude<FuseStandard, "BS 1362">;

/**
 * Band of a fuse of any rating. BS 1362, 3 and 13 A: the gates of the standard; any other rating lies between the
 * 3 A fuse's early and the 13 A fuse's late side, multiple for multiple, which is an estimate. BS 88-3 and BS 3036:
 * the late side goes through the conventional fusing current and the currents that the tables of loop impedance stand
 * for, the early side at a part of those currents; an estimate, since no early side is tabulated. A rating without a
 * row lies between all that have one.
 */
export function fuseBand(fuse: FuseStandard, ratingA: number): DeviceBand {
  if (fuse === "BS 1362") return gatedBand(ratingA) ?? between(ratingA, [gatedBand(3)!], [gatedBand(13)!]);
  const own = tabulatedBand(fuse, ratingA);
  if (own) return own;
  const ratings = new Set(fuseZs.flatMap((row) => (row.fuse === fuse ? [row.ratingA] : [])));
  const all = [...ratings].map((each) => tabulatedBand(fuse, each)!);
  return between(ratingA, all, all);
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
  const gates = tabulatedGates(fuse, ratingA);
  return gates.length === 0 ? undefined : timeOnGates(gates, currentA);
}

function tabulatedGates(fuse: FuseStandard, ratingA: number): Gate[] {
  return fuseZs
    .filter((row) => row.fuse === fuse && row.ratingA === ratingA)
    .map(({ maximumZsOhm, disconnectionS }): Gate => ({
      currentA: (supply.cMin * supply.nominalV) / maximumZsOhm,
      timeS: disconnectionS,
    }))
    .sort((a, b) => a.currentA - b.currentA);
}

function tabulatedBand(fuse: Tabulated, ratingA: number): DeviceBand | undefined {
  const gates = tabulatedGates(fuse, ratingA);
  if (gates.length === 0) return undefined;
  const { fusesMultiple, conventionalS, earlyFraction } = fuseFusing.find((row) => row.fuse === fuse)!;
  const late = [{ currentA: fusesMultiple * ratingA, timeS: conventionalS }, ...gates];
  const early = late.map(({ currentA, timeS }) => ({ currentA: earlyFraction * currentA, timeS }));
  return bandOf(ratingA, early, late, true);
}

/** Undefined for a rating that has no gate in the standard, which is every one but 3 A and 13 A. */
function gatedBand(ratingA: number): DeviceBand | undefined {
  const rows = fuseGates.filter((row) => row.ratingA === ratingA);
  if (rows.length === 0) return undefined;
  const { holdsMultiple, opensMultiple, conventionalS } = fuseLimits;
  const early = [
    { currentA: holdsMultiple * ratingA, timeS: conventionalS },
    ...rows.flatMap(({ currentA, earliestS }) => (earliestS ? [{ currentA, timeS: earliestS }] : [])),
  ];
  const late = [
    { currentA: opensMultiple * ratingA, timeS: conventionalS },
    ...rows.map(({ currentA, latestS }) => ({ currentA, timeS: latestS })),
  ];
  return bandOf(ratingA, early, late, false);
}

function bandOf(
  ratingA: number,
  early: readonly Gate[],
  late: readonly Gate[],
  isEstimate: boolean,
): DeviceBand {
  return {
    ratingA,
    holdsToA: early[0]!.currentA,
    isEstimate,
    opening: (currentA) => ({
      earliestS: timeOnGates(early, currentA),
      latestS: timeOnGates(late, currentA),
    }),
  };
}

/** Not before the soonest of the one, by the latest of the other, each at the same multiple of its own rating. */
function between(ratingA: number, early: readonly DeviceBand[], late: readonly DeviceBand[]): DeviceBand {
  const alike = (band: DeviceBand, currentA: number) => band.opening((currentA / ratingA) * band.ratingA);
  return {
    ratingA,
    holdsToA: ratingA * Math.min(...early.map((band) => band.holdsToA / band.ratingA)),
    isEstimate: true,
    opening: (currentA) => ({
      earliestS: Math.min(...early.map((band) => alike(band, currentA).earliestS)),
      latestS: Math.max(...late.map((band) => alike(band, currentA).latestS)),
    }),
  };
}
