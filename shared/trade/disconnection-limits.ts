import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const table: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.3.2.2 and Table 41.1",
  checked: "secondary copy",
};
const scope: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.3.2.2",
  checked: "secondary copy",
};
// electriciansblog.co.uk/2009/05/tt-circuits-require-a-disconnection-time-of-02-seconds names both clauses and times.
const longer: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "411.3.2.3 and 411.3.2.4",
  checked: "secondary copy",
};

/** How fast a fault to earth must be off, at a nominal voltage above 120 V up to 230 V a.c. */
export const disconnectionLimits = sourced({
  tnFinalS: [0.4, table],
  ttFinalS: [0.2, table],
  tnOtherS: [5, longer],
  ttOtherS: [1, longer],
  /** The shorter times hold for circuits with socket outlets up to the one, fixed loads only up to the other. */
  socketOutletsToA: [63, scope],
  fixedToA: [32, scope],
});
