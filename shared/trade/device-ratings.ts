import type { Source } from "./source.ts";

// Seen in infralens.in/code/IS-IEC-60898-Part-1-2002: 6, 10, 16, 20, 25, 32, 40, 50, 63 A.
const source: Source = {
  kind: "standard",
  document: "BS EN 60898-1",
  clause: "preferred values of rated current",
  checked: "secondary copy",
};

/** Made and sold, though no preferred value of the standard. */
const makers: Source = { kind: "common practice, no source" };

/** Rated currents of circuit-breakers, smallest first. */
export const deviceRatings: readonly { ratingA: number; source: Source }[] = [
  { ratingA: 6, source },
  { ratingA: 10, source },
  { ratingA: 16, source },
  { ratingA: 20, source },
  { ratingA: 25, source },
  { ratingA: 32, source },
  { ratingA: 40, source },
  { ratingA: 45, source: makers },
  { ratingA: 50, source },
  { ratingA: 63, source },
];
