import type { Source } from "./source.ts";

const seen: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "523.9, Table 52.2",
  checked: "secondary copy",
};
const memory: Source = { ...seen, checked: "from memory" };

/** Ci, rating factor for a cable totally surrounded by thermal insulation over this length of its run. */
export const insulationFactors: readonly { lengthMm: number; factor: number; source: Source }[] = [
  { lengthMm: 50, factor: 0.88, source: memory },
  { lengthMm: 100, factor: 0.78, source: seen },
  { lengthMm: 200, factor: 0.63, source: memory },
  { lengthMm: 400, factor: 0.51, source: memory },
  { lengthMm: 500, factor: 0.5, source: seen },
];
