import type { Scenario, StrippedScenario } from "./scenario.schema.ts";

/** A scenario without what would give it away: no answers, no hidden faults, no hints. */
export function strip(scenario: Scenario): StrippedScenario {
  const {
    modelAnswers: _modelAnswers,
    wrongAnswers: _wrongAnswers,
    hiddenFaults: _hiddenFaults,
    drawnFaults: _drawnFaults,
    hints: _hints,
    ...shown
  } = scenario;
  return shown;
}
