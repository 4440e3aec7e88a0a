import type { Source } from "./source.ts";

const seen: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4D5 (two-core, single-phase, 70 °C conductor)",
  checked: "secondary copy",
};
/** 4 mm²: seen only indirectly, agrees with 2 x 4.61 x 1.20 = 11.06. */
const recomputed: Source = { ...seen, checked: "recomputed" };

/** Voltage drop per ampere and metre of cable, both conductors, at 70 °C. */
export const cableVoltageDrop: readonly { csaMm2: number; dropMvPerAM: number; source: Source }[] = [
  { csaMm2: 1.0, dropMvPerAM: 44, source: seen },
  { csaMm2: 1.5, dropMvPerAM: 29, source: seen },
  { csaMm2: 2.5, dropMvPerAM: 18, source: seen },
  { csaMm2: 4, dropMvPerAM: 11, source: recomputed },
  { csaMm2: 6, dropMvPerAM: 7.3, source: seen },
  { csaMm2: 10, dropMvPerAM: 4.4, source: seen },
  { csaMm2: 16, dropMvPerAM: 2.8, source: seen },
];
