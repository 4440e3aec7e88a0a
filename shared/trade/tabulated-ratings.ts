import { disconnectionLimits } from "./disconnection-limits.ts";
import { type FuseStandard, fuseZs } from "./fuse-zs.ts";

/** True for a standard of fuses whose largest Zs is tabulated. */
export const isFuseStandard = (standard: string | undefined): standard is FuseStandard =>
  fuseZs.some(({ fuse }) => fuse === standard);

/**
 * Ratings of a fuse, in amperes, for which a largest Zs is tabulated, in place of one that has none: those with a row for
 * 0.4 s, which serve any circuit; in place of a rating above what has to disconnect so soon, those for 5 s as well.
 */
export function tabulatedRatingsA(standard: FuseStandard, insteadOfA: number): number[] {
  const { tnFinalS, fixedToA } = disconnectionLimits;
  const rows = fuseZs.filter(
    ({ fuse, ratingA, disconnectionS }) =>
      fuse === standard &&
      ratingA !== insteadOfA &&
      (disconnectionS <= tnFinalS || (insteadOfA > fixedToA && ratingA > fixedToA)),
  );
  return [...new Set(rows.map(({ ratingA }) => ratingA))].sort((a, b) => a - b);
}
