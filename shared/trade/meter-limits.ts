import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };

/** What the simulated meter can show. */
export const meterLimits = sourced({
  testLeadsOhm: [0.08, practice],
  /** A lead of 1.5 mm² and 30 m for the test of the protective conductor alone. */
  longLeadOhm: [0.36, practice],
  resolutionOhm: [0.01, practice],
  mostOhm: [1999, practice],
  mostInsulationMegohm: [999, practice],
});
