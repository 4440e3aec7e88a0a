import { deviceRatings } from "./device-ratings.ts";

/** Smallest standard circuit-breaker rating in amperes that is not below a current; undefined above the largest. */
export function nextDeviceRatingA(currentA: number): number | undefined {
  return deviceRatings.find((row) => row.ratingA >= currentA)?.ratingA;
}
