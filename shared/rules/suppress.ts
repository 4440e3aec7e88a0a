import { rankOf } from "./rank-of.ts";
import { hidingRuleIds, type Place, type Rule, type RuleId, weights } from "./rule.ts";
import type { Finding, Suppressed } from "./verdict.ts";

const hiding: ReadonlySet<RuleId> = new Set(hidingRuleIds);

type Suppressing = Pick<Rule, "id" | "isNeverHidden" | "isOutcome" | "explains">;

/**
 * One cause, one finding: of all that share a conductor, a cable or a contact the first in the order of rules stays,
 * and the others are kept with what explains them. Two faults of one station have nothing in common but the place:
 * there only what a rule says it explains is hidden. Nothing hides a heavier finding, nor one of its own rule; what is
 * itself suppressed hides nothing, so mending a cause brings the next out. A danger is hidden only where all its causes
 * are shown, for it does not wait for what is wrong at another conductor.
 */
export const suppress = (
  seen: readonly Finding[],
  pack: readonly Suppressing[],
): { findings: Finding[]; suppressed: Suppressed[] } => {
  const ruleOf = rulesById(pack);
  const isOutcome = ({ rule }: Finding): boolean => ruleOf.get(rule)?.isOutcome === true;
  const ordered = [...seen].sort(
    (a, b) => Number(isOutcome(a)) - Number(isOutcome(b)) || rankOf(a.rule) - rankOf(b.rule),
  );
  const holders = new Map<string, Finding[]>();
  const findings: Finding[] = [];
  const suppressed: Suppressed[] = [];
  for (const finding of ordered) {
    const explaining = (cause: Place): Finding | undefined =>
      holders.get(`${cause.kind} ${cause.id}`)?.find((holder) => {
        if (holder.rule === finding.rule || isLighter(holder, finding)) return false;
        if (cause.kind === "station")
          return ruleOf.get(holder.rule)?.explains?.includes(finding.rule) === true;
        return hiding.has(holder.rule) || isOutcome(finding);
      });
    const explained = ruleOf.get(finding.rule)?.isNeverHidden ? [] : finding.causes.map(explaining);
    const [by] = explained.filter((holder) => holder !== undefined);
    if (by && (finding.weight !== "danger" || !explained.includes(undefined))) {
      suppressed.push({ ...finding, by: by.id });
      continue;
    }
    findings.push(finding);
    for (const { kind, id } of finding.causes) {
      const known = holders.get(`${kind} ${id}`);
      if (known) known.push(finding);
      else holders.set(`${kind} ${id}`, [finding]);
    }
  }
  return { findings, suppressed };
};

const tables = new WeakMap<readonly Suppressing[], ReadonlyMap<RuleId, Suppressing>>();

/** The rules of a pack by their ids; one table a pack. */
function rulesById(pack: readonly Suppressing[]): ReadonlyMap<RuleId, Suppressing> {
  const known = tables.get(pack);
  if (known) return known;
  const table = new Map(pack.map((rule) => [rule.id, rule]));
  tables.set(pack, table);
  return table;
}

const isLighter = (a: Finding, b: Finding): boolean => weights.indexOf(a.weight) > weights.indexOf(b.weight);
