/** Drawn width by conductor size, in millimetres on the screen: thicker copper, thicker cable. */
const widths = [
  { csaMm2: 1, widthMm: 2.2 },
  { csaMm2: 1.5, widthMm: 2.5 },
  { csaMm2: 2.5, widthMm: 3 },
  { csaMm2: 4, widthMm: 3.5 },
  { csaMm2: 6, widthMm: 4 },
  { csaMm2: 10, widthMm: 4.5 },
];
const unsizedMm = 2.2;

/** How wide a cable of that size is drawn, in millimetres; one without a size as the thinnest. */
export const cableWidthMm = (csaMm2: number | undefined): number =>
  csaMm2 === undefined ? unsizedMm : (widths.findLast((row) => row.csaMm2 <= csaMm2)?.widthMm ?? unsizedMm);

/** Distance from one cable's lane to the next, in millimetres: the widest cable and a gap. */
export const lanePitchMm = 5.2;
