import type { Source } from "./source.ts";

/** Both types as a test instrument's manual prints them: https://www.easymanua.ls/kewtech/kt64/manual?p=35 */
const product: Source = {
  kind: "standard",
  document: "BS EN 61008-1",
  clause: "Table 1, operating times",
  checked: "secondary copy",
};

/**
 * Operating times of an RCD from a multiple of its rated residual current on: never before the one, by the other at
 * the latest. The S type waits on purpose, so that one behind it can clear first.
 */
export const rcdTimes: readonly {
  type: "general" | "S";
  fromMultiple: number;
  leastMs: number;
  mostMs: number;
  source: Source;
}[] = [
  { type: "general", fromMultiple: 1, leastMs: 0, mostMs: 300, source: product },
  { type: "general", fromMultiple: 5, leastMs: 0, mostMs: 40, source: product },
  { type: "S", fromMultiple: 1, leastMs: 130, mostMs: 500, source: product },
  { type: "S", fromMultiple: 5, leastMs: 50, mostMs: 150, source: product },
];
