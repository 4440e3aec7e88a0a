import type { Read } from "../reading/problem.ts";
import { readWith } from "../reading/read-json.schema.ts";
import { scenarioProblems, unstatedProblems } from "./scenario-problems.ts";
import { type Scenario, scenarioSchema } from "./scenario.schema.ts";

/** Reads a scenario file, text or parsed; gives it or every problem with file, field and remedy. */
export const readScenario = (input: unknown, fileName: string): Read<Scenario> =>
  readWith(scenarioSchema, input, fileName, (scenario) => [
    ...scenarioProblems(scenario),
    ...unstatedProblems(scenario),
  ]);
