import type { CableId } from "../../shared/board/ids.ts";
import { joinsToCables } from "../../shared/wiring/joins-to-cables.ts";
import { groupsOf, type Plugged } from "../../shared/wiring/plugged.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { reduce } from "../attempt/reduce.ts";
import type { ScenarioKit } from "../library.ts";

/**
 * The state that work would have at the step Wire with this on the board and a size for each cable, made as from a log
 * and kept in none: it has no learner and no hash of anything.
 */
export function unloggedState(
  { scenario, routeBetween }: ScenarioKit,
  plugged: Plugged,
  csaMm2Of: (cable: CableId) => number | undefined,
): AttemptState {
  const cables = joinsToCables(groupsOf(plugged.joins), (a, b) => routeBetween(a, b)?.lengthM);
  const events: AttemptEvent[] = [
    {
      type: "attempt-started",
      content: {
        scenario: scenario.id,
        scenarioRevision: scenario.revision,
        scenarioHash: "",
        board: "",
        boardHash: "",
        rulePackVersion: "",
        softwareVersion: "",
        learner: null,
        kind: "first",
        mode: "open-day",
        isExistingCircuit: scenario.isExistingCircuit,
      },
    },
    { type: "sensed", content: { added: plugged.joins, removed: [], full: plugged } },
    { type: "caution-accepted", content: {} },
    { type: "step-entered", content: { step: "wire" } },
    ...cables.flatMap(({ id }): AttemptEvent[] => {
      const csaMm2 = csaMm2Of(id);
      if (csaMm2 === undefined) return [];
      return [{ type: "setting", content: { subject: id, key: "csaMm2", value: csaMm2, by: "trainer" } }];
    }),
  ];
  const state = events.reduce<AttemptState | undefined>(
    (before, event) => reduce(before, scenario.id, event),
    undefined,
  );
  if (!state) throw new Error("an attempt that was started has a state");
  return state;
}
