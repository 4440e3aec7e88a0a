import type { Source } from "./source.ts";
import { sourced } from "./sourced.ts";

const practice: Source = { kind: "common practice, no source" };

/** What the simulated meter can show. */
export const meterLimits = sourced({
  testLeadsOhm: [0.08, practice],
  resolutionOhm: [0.01, practice],
  mostOhm: [1999, practice],
  mostInsulationMegohm: [999, practice],
});
