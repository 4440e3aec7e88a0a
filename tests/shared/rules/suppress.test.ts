import { describe, expect, it } from "vitest";
import { hidingRuleIds, type RuleId, ruleIds } from "../../../shared/rules/rule.ts";
import { suppress } from "../../../shared/rules/suppress.ts";
import type { Finding } from "../../../shared/rules/verdict.ts";

/** What a rule says of the one cable there is. */
const findingBy = (rule: RuleId): Finding => ({
  id: `${rule}/seen/a~b`,
  rule,
  variant: "seen",
  weight: "fix",
  causes: [{ kind: "cable", id: "a~b" }],
  places: [{ kind: "cable", id: "a~b" }],
  facts: {},
});

/** Which rule is hidden where both speak of one cause, whichever was heard first. */
const hiddenOf = (one: RuleId, other: RuleId): string[] =>
  suppress(
    [one, other].map(findingBy),
    ruleIds.map((id) => ({ id })),
  ).suppressed.map(({ rule, by }) => `${rule} by ${by.slice(0, by.indexOf("/"))}`);

const isHiding = (id: RuleId): boolean => (hidingRuleIds as readonly RuleId[]).includes(id);

describe("of two rules that speak of one cause", () => {
  it.each(hidingRuleIds.map((id, at) => ({ id, later: ruleIds.slice(at + 1) })))(
    "$id, listed among those that hide, hides every rule after it",
    ({ id, later }) => {
      expect(later.map((other) => hiddenOf(other, id))).toEqual(later.map((other) => [`${other} by ${id}`]));
    },
  );

  it("none that only tells hides another", () => {
    const telling = ruleIds.filter((id) => !isHiding(id));
    expect(telling.length).toBeGreaterThan(1);
    expect(telling.flatMap((one) => telling.flatMap((other) => hiddenOf(one, other)))).toEqual([]);
  });
});
