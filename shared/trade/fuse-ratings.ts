import type { Source } from "./source.ts";

// liquisearch.com/bs_1363/fuses: 3 and 13 A are preferred; any rating up to 13 A is allowed, 5 and 10 A among those sold.
const source: Source = {
  kind: "standard",
  document: "BS 1362:1973",
  clause: "ratings in usual supply",
  checked: "secondary copy",
};

/** Cartridges of a fused connection unit or plug, smallest first. */
export const fuseRatings: readonly { ratingA: number; source: Source }[] = [
  { ratingA: 3, source },
  { ratingA: 5, source },
  { ratingA: 10, source },
  { ratingA: 13, source },
];
