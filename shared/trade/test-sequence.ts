import type { Source } from "./source.ts";

/** 612.1 as listed at http://electriciancentre.co.uk/how-to/electrical-inspection-testing-sequence-tests/ */
const sequence: Source = {
  kind: "regulation",
  document: "BS 7671:2018",
  clause: "643.1 (612.1 of the 2008 edition), order of dead tests",
  checked: "secondary copy",
};
const ring: Source = {
  kind: "guidance",
  document: "IET Guidance Note 3",
  clause: "ring final circuit continuity, steps 1 to 3",
  checked: "secondary copy",
};

/** Dead tests of a final circuit, as they are recorded. */
export type DeadTest =
  "continuity-cpc" | "ring-step-1" | "ring-step-2" | "ring-step-3" | "insulation" | "polarity";

/**
 * Order of the dead tests, lower first; equal ranks may come either way round. The three steps prove the protective
 * conductor of a ring, so for a ring they stand in the place of the continuity test.
 */
export const testSequence: readonly { test: DeadTest; rank: number; source: Source }[] = [
  { test: "continuity-cpc", rank: 1, source: sequence },
  { test: "ring-step-1", rank: 2, source: ring },
  { test: "ring-step-2", rank: 3, source: ring },
  { test: "ring-step-3", rank: 4, source: ring },
  { test: "insulation", rank: 5, source: sequence },
  { test: "polarity", rank: 6, source: sequence },
];
