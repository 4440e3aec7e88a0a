/** Cable sizes to choose from, smallest first; the one the cable had before stands in front. */
export const sizesToOffer = (sizesMm2: readonly number[], beforeMm2: number | undefined): number[] => {
  const rest = sizesMm2.filter((size) => size !== beforeMm2).toSorted((a, b) => a - b);
  return beforeMm2 === undefined ? rest : [beforeMm2, ...rest];
};
