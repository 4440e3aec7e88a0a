import { breakerGates } from "../trade/breaker-gates.ts";
import type { DeviceBand } from "./opening-time.ts";

/** Which edge of a device's band a run follows. */
export type Edge = "earliest" | "latest";

/** How far a device is on its way to opening: 1 opens it. A device without a band never opens by itself. */
export interface TripProgress {
  band: DeviceBand | undefined;
  part: number;
}

/** The time in which a device that has been loaded counts as cold again: the conventional hour of its test. */
const recoveryS = breakerGates.find(({ test }) => test === "a")!.earliestS!;

/** Seconds until the device opens if the current stays as it is; Infinity where it does not. */
export function opensInS({ band, part }: TripProgress, edge: Edge, currentA: number): number {
  if (!band) return Infinity;
  const { earliestS, latestS } = band.opening(currentA);
  return (1 - part) * (edge === "earliest" ? earliestS : latestS);
}

/**
 * The progress after some seconds of a current. Each current uses up its part of the time it takes alone. At a current
 * that it must hold, the device recovers: at once on the late side, over an hour on the early side. That is our
 * reading, since the standards gate constant currents only.
 */
export function progressAfter(
  progress: TripProgress,
  edge: Edge,
  currentA: number,
  durationS: number,
): TripProgress {
  const { band, part } = progress;
  if (!band) return progress;
  const { earliestS, latestS } = band.opening(currentA);
  const openingS = edge === "earliest" ? earliestS : latestS;
  if (openingS === 0) return { band, part: 1 };
  if (openingS < Infinity) return { band, part: Math.min(1, part + durationS / openingS) };
  if (currentA >= band.holdsToA) return progress;
  return { band, part: edge === "latest" ? 0 : Math.max(0, part - durationS / recoveryS) };
}
