import type { Source } from "./source.ts";

// 500 and 1000 V with 1 MΩ are also in a lesson of izapp.app/courses/c-and-g-2391 (insulation resistance testing).
const seen: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "643.3.2 and 643.3.3, Table 64",
  checked: "secondary copy",
};

/** Insulation resistance: test voltage (d.c.) and least value, by nominal voltage of the circuit. */
export const insulationTests: readonly {
  circuit: "SELV or PELV" | "to 500 V" | "above 500 V";
  testV: number;
  leastMegohm: number;
  source: Source;
}[] = [
  { circuit: "SELV or PELV", testV: 250, leastMegohm: 0.5, source: seen },
  { circuit: "to 500 V", testV: 500, leastMegohm: 1.0, source: seen },
  { circuit: "above 500 V", testV: 1000, leastMegohm: 1.0, source: seen },
];
