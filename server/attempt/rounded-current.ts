/** A current in amperes as a learner reads it: to a tenth. */
export const roundedA = (currentA: number): number => Math.round(currentA * 10) / 10;
