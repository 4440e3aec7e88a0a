import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const table: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "524.1, Table 52.3",
  checked: "secondary copy",
};

/** Smallest copper conductor of a fixed cable. */
export const leastSizes = sourced({
  lightingCsaMm2: [1.0, table],
  powerCsaMm2: [1.5, table],
});
