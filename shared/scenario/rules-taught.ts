import { type RuleId, ruleIds } from "../rules/rule.ts";
import type { Scenario } from "./scenario.schema.ts";

/**
 * The rules that a scenario teaches, in the order of causes: those that a wrong answer of it breaks. Wrong answers
 * state no notes, so a rule that only notes is taught by none.
 */
export function rulesTaught({ wrongAnswers }: Pick<Scenario, "wrongAnswers">): RuleId[] {
  const broken = new Set(wrongAnswers.flatMap(({ findings }) => findings.map(({ rule }) => rule)));
  return ruleIds.filter((id) => broken.has(id));
}

/** Which scenarios teach each rule, by their ids; a rule that none teaches has an empty list. */
export function ruleMap(
  scenarios: readonly Pick<Scenario, "id" | "wrongAnswers">[],
): ReadonlyMap<RuleId, string[]> {
  const taught = scenarios.map((scenario) => ({ id: scenario.id, rules: new Set(rulesTaught(scenario)) }));
  return new Map(
    ruleIds.map((rule) => [rule, taught.filter(({ rules }) => rules.has(rule)).map(({ id }) => id)]),
  );
}
