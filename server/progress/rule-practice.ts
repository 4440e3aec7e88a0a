import { type RuleId, ruleIds } from "../../shared/rules/rule.ts";

/** One go of a learner's practice, as the log tells it. */
export interface Go {
  scenario: string;
  endedWallMs: number;
  outcome: "met" | "not-yet" | "cannot-say" | "left";
  /** Rules that a verdict found broken at any time of it, the hand-in too. */
  tripped: readonly RuleId[];
}

/** How a learner stands with a rule. */
export interface RulePractice {
  rule: RuleId;
  trippedCount: number;
  /** Goes that were handed in at a task that teaches it, in which it was never broken. */
  keptCount: number;
  isTripping: boolean;
  lastWallMs: number;
  dueWallMs: number;
}

const dayMs = 24 * 60 * 60 * 1000;

/**
 * Days until a rule wants practice again, by how often it was kept in a row: at once after it was tripped over, then
 * further and further apart. That practice spaced wider and wider is remembered longer is common knowledge of teaching;
 * the days themselves are our own choice, no source.
 */
const daysAfter = [0, 1, 3, 7, 14, 30] as const;

/**
 * How a learner stands with every rule that came up in their goes, in the order of causes. `goes` in their order;
 * `taught` says which rules a task teaches. Keeping a rule counts where the go was handed in and the task teaches it;
 * tripping over it counts anywhere.
 */
export function rulePractice(
  goes: readonly Go[],
  taught: (scenario: string) => readonly RuleId[],
): RulePractice[] {
  const all = new Map<RuleId, RulePractice & { row: number }>();
  const at = (rule: RuleId) =>
    all.get(rule) ?? {
      ...{ rule, trippedCount: 0, keptCount: 0, isTripping: false },
      ...{ lastWallMs: 0, dueWallMs: 0, row: 0 },
    };
  for (const { scenario, endedWallMs, outcome, tripped } of goes) {
    const kept = outcome === "left" ? [] : taught(scenario).filter((rule) => !tripped.includes(rule));
    for (const rule of tripped) {
      const before = at(rule);
      all.set(rule, {
        ...before,
        ...{ trippedCount: before.trippedCount + 1, isTripping: true, row: 0 },
        ...{ lastWallMs: endedWallMs, dueWallMs: endedWallMs },
      });
    }
    for (const rule of kept) {
      const before = at(rule);
      const row = Math.min(before.row + 1, daysAfter.length - 1);
      all.set(rule, {
        ...before,
        ...{ keptCount: before.keptCount + 1, isTripping: false, row },
        ...{ lastWallMs: endedWallMs, dueWallMs: endedWallMs + daysAfter[row]! * dayMs },
      });
    }
  }
  return ruleIds.flatMap((rule) => {
    const one = all.get(rule);
    if (!one) return [];
    const { row: _row, ...said } = one;
    return [said];
  });
}

/** The rules that want practice now: those tripped over last first, most often first, then the longest overdue. */
export const dueRules = (practice: readonly RulePractice[], nowMs: number): RulePractice[] =>
  practice
    .filter(({ dueWallMs }) => dueWallMs <= nowMs)
    .sort(
      (a, b) =>
        Number(b.isTripping) - Number(a.isTripping) ||
        (a.isTripping ? b.trippedCount - a.trippedCount : 0) ||
        a.dueWallMs - b.dueWallMs ||
        ruleIds.indexOf(a.rule) - ruleIds.indexOf(b.rule),
    );

/** The task to practise a rule with: one that was not done yet, or longest ago; of those the easiest, then by name. */
export function taskFor(
  rule: RuleId,
  tasks: readonly { id: string; level: number; rules: readonly RuleId[] }[],
  goes: readonly Go[],
): string | undefined {
  const lastOf = (id: string): number => goes.findLast(({ scenario }) => scenario === id)?.endedWallMs ?? 0;
  return tasks
    .filter(({ rules }) => rules.includes(rule))
    .toSorted((a, b) => lastOf(a.id) - lastOf(b.id) || a.level - b.level || (a.id < b.id ? -1 : 1))[0]?.id;
}
