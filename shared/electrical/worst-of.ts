/**
 * Those with the largest measure: all that are level with it but for rounding, so that neither names nor the order of
 * a sum decide between equals.
 */
export function worstOf<T>(all: readonly T[], measure: (each: T) => number): T[] {
  const most = Math.max(...all.map(measure));
  const tolerance = 1e-9 * Math.max(1, Math.abs(most));
  return all.filter((each) => measure(each) >= most - tolerance);
}
