import { breakerCurves, type BreakerCurve } from "../trade/breaker-curves.ts";
import { breakerGates } from "../trade/breaker-gates.ts";
import { disconnectingDevice } from "../trade/disconnecting-device.ts";
import type { StationSettings } from "../board/station-settings.schema.ts";
import { fuseBand } from "./fuse-band.ts";
import { timeOnGates } from "./gate-line.ts";
import type { DeviceBand } from "./opening-time.ts";

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
    isEstimate: false,
    opening: (currentA) => ({
      earliestS: currentA > heldBelowA ? 0 : Math.max(shape.instantaneousS, timeOnGates(early, currentA)),
      latestS: currentA >= instantaneousFromA ? shape.instantaneousS : timeOnGates(late, currentA),
    }),
  };
}

/**
 * Band of the device of a way or of the fuse of a connection unit by what is stated there. Undefined where its rating,
 * its standard or a circuit-breaker's curve is not stated, or where no standard makes a breaker of that rating.
 */
export function bandOfStation(
  settings: StationSettings | undefined,
  kind: "device" | "fuse",
): DeviceBand | undefined {
  const { deviceStandard, deviceCurve, deviceRatingA, fuseRatingA } = settings ?? {};
  if (kind === "fuse") return fuseRatingA === undefined ? undefined : fuseBand("BS 1362", fuseRatingA);
  const device = deviceStandard && disconnectingDevice(deviceStandard, deviceCurve);
  if (device === undefined || deviceRatingA === undefined) return undefined;
  const isBreaker = device === "B" || device === "C" || device === "D";
  return isBreaker ? breakerBand(device, deviceRatingA) : fuseBand(device, deviceRatingA);
}
