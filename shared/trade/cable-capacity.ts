import type { ReferenceMethod } from "./reference-method.ts";
import type { Source } from "./source.ts";

const seen: Source = {
  kind: "standard",
  document: "BS 7671:2018",
  clause: "Table 4D5 (70 °C flat twin-and-earth, 30 °C ambient)",
  checked: "secondary copy",
};
/**
 * No copy of these cells was seen. Tables on the web for the same cable clipped direct (sparkyhub.co.uk, tradecalcs)
 * print 37 and 47 A for 4 and 6 mm², but take 1, 10 and 16 mm² from the table for singles: they prove nothing.
 */
const memory: Source = {
  ...seen,
  clause: `${seen.clause}, cell remembered or inferred, seen in no copy`,
  checked: "from memory",
};

/**
 * Tabulated current-carrying capacity, one row a cell. 13, 16 and 21 A for 1.0, 1.5 and 2.5 mm² are method 100
 * (insulation to 100 mm); a common slip calls them method 101, which is 10.5, 13 and 17 A.
 */
export const cableCapacity: readonly {
  csaMm2: number;
  method: ReferenceMethod;
  capacityA: number;
  source: Source;
}[] = [
  { csaMm2: 1, method: "A", capacityA: 11.5, source: seen },
  { csaMm2: 1, method: "C", capacityA: 16, source: seen },
  { csaMm2: 1, method: "100", capacityA: 13, source: seen },
  { csaMm2: 1, method: "101", capacityA: 10.5, source: seen },
  { csaMm2: 1, method: "102", capacityA: 13, source: seen },
  { csaMm2: 1, method: "103", capacityA: 8, source: seen },
  { csaMm2: 1.5, method: "A", capacityA: 14.5, source: seen },
  { csaMm2: 1.5, method: "C", capacityA: 20, source: seen },
  { csaMm2: 1.5, method: "100", capacityA: 16, source: seen },
  { csaMm2: 1.5, method: "101", capacityA: 13, source: seen },
  { csaMm2: 1.5, method: "102", capacityA: 16, source: seen },
  { csaMm2: 1.5, method: "103", capacityA: 10, source: seen },
  { csaMm2: 2.5, method: "A", capacityA: 20, source: memory },
  { csaMm2: 2.5, method: "C", capacityA: 27, source: seen },
  { csaMm2: 2.5, method: "100", capacityA: 21, source: seen },
  { csaMm2: 2.5, method: "101", capacityA: 17, source: seen },
  { csaMm2: 2.5, method: "102", capacityA: 21, source: seen },
  { csaMm2: 2.5, method: "103", capacityA: 13.5, source: seen },
  { csaMm2: 4, method: "A", capacityA: 26, source: memory },
  { csaMm2: 4, method: "C", capacityA: 37, source: memory },
  { csaMm2: 4, method: "100", capacityA: 27, source: seen },
  { csaMm2: 4, method: "101", capacityA: 22, source: seen },
  { csaMm2: 4, method: "102", capacityA: 27, source: memory },
  { csaMm2: 4, method: "103", capacityA: 17.5, source: seen },
  { csaMm2: 6, method: "A", capacityA: 32, source: memory },
  { csaMm2: 6, method: "C", capacityA: 47, source: memory },
  { csaMm2: 6, method: "100", capacityA: 34, source: memory },
  { csaMm2: 6, method: "101", capacityA: 27, source: memory },
  { csaMm2: 6, method: "102", capacityA: 35, source: memory },
  { csaMm2: 6, method: "103", capacityA: 23.5, source: seen },
  { csaMm2: 10, method: "A", capacityA: 44, source: memory },
  { csaMm2: 10, method: "C", capacityA: 64, source: seen },
  { csaMm2: 10, method: "100", capacityA: 45, source: seen },
  { csaMm2: 10, method: "101", capacityA: 36, source: seen },
  { csaMm2: 10, method: "102", capacityA: 47, source: memory },
  { csaMm2: 10, method: "103", capacityA: 32, source: seen },
  { csaMm2: 16, method: "A", capacityA: 57, source: memory },
  { csaMm2: 16, method: "C", capacityA: 85, source: seen },
  { csaMm2: 16, method: "100", capacityA: 57, source: memory },
  { csaMm2: 16, method: "101", capacityA: 46, source: memory },
  { csaMm2: 16, method: "102", capacityA: 63, source: memory },
  { csaMm2: 16, method: "103", capacityA: 42.5, source: seen },
];
