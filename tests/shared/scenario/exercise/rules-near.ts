import type { RuleId } from "../../../../shared/rules/rule.ts";
import { isToMend } from "../../../../shared/rules/rule.ts";
import type { Judge } from "../../../../shared/scenario/answer-misses.ts";
import { changed } from "../../../../shared/scenario/change.ts";
import { routes } from "../../../../shared/scenario/plan-route.ts";
import { possibleChanges } from "../../../../shared/scenario/possible-changes.ts";
import { scenarioEntries } from "../../../../shared/scenario/scenario-entries.ts";
import type { Scenario } from "../../../../shared/scenario/scenario.schema.ts";
import { strip } from "../../../../shared/scenario/strip.ts";
import { toWiring } from "../../../../shared/scenario/to-wiring.ts";

/**
 * What an exercise demands: the rules that are broken somewhere among all wirings that are one move away from its
 * answer. Whoever builds it has to know them, for each is one slip away.
 */
export function rulesNear(scenario: Scenario, judge: Judge): ReadonlySet<RuleId> {
  const [built] = scenario.modelAnswers;
  if (!built) return new Set();
  const stripped = strip(scenario);
  // A board that has just what the exercise asks for: what is demanded hangs on no board.
  const board = {
    stations: scenario.stations.map((station) => ({
      id: station.id,
      kind: station.kind,
      entries: scenarioEntries(station),
    })),
  };
  const routeBetween = routes(scenario.plan);
  // What is asked for is not met by most of them: the findings alone count.
  const asked = { ...stripped, requirements: [] };
  return new Set(
    possibleChanges({ scenario: stripped, board: board as never, built }).flatMap((change) =>
      judge(toWiring({ scenario: asked, built: changed(built, [change]), routeBetween }))
        .findings.filter(({ weight }) => isToMend(weight))
        .map(({ rule }) => rule),
    ),
  );
}
