import type { Source } from "./source.ts";

const source: Source = { kind: "from memory", about: "BS 1362 cartridge ratings in usual supply" };

/** Cartridges of a fused connection unit or plug, smallest first. */
export const fuseRatings: readonly { ratingA: number; source: Source }[] = [
  { ratingA: 3, source },
  { ratingA: 5, source },
  { ratingA: 10, source },
  { ratingA: 13, source },
];
