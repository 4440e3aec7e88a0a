import type { Source } from "./source.ts";

const source: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4B1 (70 °C thermoplastic, in air)",
  checked: "secondary copy",
};

/** Ca, rating factor for the temperature of the air around the cable. */
export const ambientFactors: readonly { ambientC: number; factor: number; source: Source }[] = [
  { ambientC: 25, factor: 1.03, source },
  { ambientC: 30, factor: 1.0, source },
  { ambientC: 35, factor: 0.94, source },
  { ambientC: 40, factor: 0.87, source },
  { ambientC: 45, factor: 0.79, source },
  { ambientC: 50, factor: 0.71, source },
  { ambientC: 55, factor: 0.61, source },
  { ambientC: 60, factor: 0.5, source },
];
