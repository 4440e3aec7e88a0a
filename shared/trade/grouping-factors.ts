import type { Source } from "./source.ts";

// The whole row is in fliphtml5.com/glisk/snup/17th_edition_iee_wiring_regulations/60.
const seen: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4C1 item 1 (bunched or enclosed)",
  checked: "secondary copy",
};

/** Cg, rating factor for circuits or cables that run together, this one counted. */
export const groupingFactors: readonly { circuits: number; factor: number; source: Source }[] = [
  { circuits: 1, factor: 1.0, source: seen },
  { circuits: 2, factor: 0.8, source: seen },
  { circuits: 3, factor: 0.7, source: seen },
  { circuits: 4, factor: 0.65, source: seen },
  { circuits: 5, factor: 0.6, source: seen },
  { circuits: 6, factor: 0.57, source: seen },
  { circuits: 7, factor: 0.54, source: seen },
  { circuits: 8, factor: 0.52, source: seen },
  { circuits: 9, factor: 0.5, source: seen },
  { circuits: 12, factor: 0.45, source: seen },
  { circuits: 16, factor: 0.41, source: seen },
  { circuits: 20, factor: 0.38, source: seen },
];
