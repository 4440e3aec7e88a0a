import type { SensedCable } from "../../shared/protocol/bench-view.ts";
import type { CableFigures } from "../../shared/rules/verdict.ts";

/** Tenths of an ampere are as fine as a screen writes. */
const tenths = 10;
/** Takes off what binary fractions add, so that 20 stays 20. */
const slack = 1e-9;

/**
 * Iz against what it must be at least, in amperes, written so that rounding never makes a cable look better than it
 * is; nothing where either is not known.
 */
export const cableCarries = ({ ratingA, neededA }: CableFigures): Pick<SensedCable, "carries"> =>
  ratingA === undefined || neededA === undefined
    ? {}
    : {
        carries: {
          ratingA: Math.floor(ratingA * tenths + slack) / tenths,
          neededA: Math.ceil(neededA * tenths - slack) / tenths,
          isBelow: ratingA < neededA,
        },
      };
