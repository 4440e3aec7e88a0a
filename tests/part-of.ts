/** How far a run goes: over each case of a sweep, or over a part of them that its seed chooses. */
export interface Run {
  isWhole: boolean;
  seed: number;
}

/**
 * The cases of a sweep that a run tries: each one where the run is whole, else one of so many, beginning at another one
 * for another seed.
 *
 * @param more where to begin besides, for sweeps that share the cases among them
 */
export const partOf = <T>(
  { isWhole, seed }: Run,
  cases: readonly T[],
  oneOf: number,
  more = 0,
): readonly T[] => (isWhole ? cases : cases.filter((_, at) => (at + seed + more) % oneOf === 0));
