import { type Accessory, accessoryRatings } from "./accessory-ratings.ts";

/** Rating in amperes usual on an accessory where it does not say (product standards, from memory). */
export function usualRatingA(accessory: Accessory): number {
  const row = accessoryRatings.find((candidate) => candidate.accessory === accessory);
  if (!row) throw new RangeError(`no rating is listed for ${accessory}`);
  return row.ratingA;
}

/** The most that a socket outlet can draw at worst, in amperes: 13 A a single, 20 A a twin. */
export function socketOutletDemandA(gangs: 1 | 2): number {
  return usualRatingA(gangs === 1 ? "single socket outlet" : "twin socket outlet");
}
