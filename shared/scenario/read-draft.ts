import type { Read } from "../reading/problem.ts";
import { readWith } from "../reading/read-json.schema.ts";
import { scenarioProblems } from "./scenario-problems.ts";
import { draftSchema, type Scenario } from "./scenario.schema.ts";

/**
 * Reads a scenario that is still being made: it may ask for nothing yet and have no answers. What it has must be right
 * all the same, for it can be wired and judged.
 */
export const readDraft = (input: unknown, fileName: string): Read<Scenario> =>
  readWith(draftSchema, input, fileName, scenarioProblems);
