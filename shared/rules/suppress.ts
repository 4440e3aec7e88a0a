import { rankOf } from "./rank-of.ts";
import { type RuleId, weights } from "./rule.ts";
import type { Finding, Suppressed } from "./verdict.ts";

/** The last rule that hides others; those after it hide nothing among themselves. */
const lastThatHides = rankOf("lighting-load");

/**
 * One cause, one finding: of all that share a cause the first in the order of rules stays, and the others are kept
 * with what explains them. Nothing hides a heavier finding, nor one of its own rule; what is itself suppressed
 * hides nothing, so mending a cause brings the next out. Rules that are never hidden share a way or a point with
 * others, but not what is wrong with it: a ring that is closed still lacks its RCD.
 */
export const suppress = (
  seen: readonly Finding[],
  neverHidden: ReadonlySet<RuleId> = new Set(),
): { findings: Finding[]; suppressed: Suppressed[] } => {
  const ordered = [...seen].sort((a, b) => rankOf(a.rule) - rankOf(b.rule));
  const holders = new Map<string, Finding[]>();
  const findings: Finding[] = [];
  const suppressed: Suppressed[] = [];
  for (const finding of ordered) {
    const by = (neverHidden.has(finding.rule) ? [] : finding.causes)
      .flatMap((cause) => holders.get(`${cause.kind} ${cause.id}`) ?? [])
      .find(
        (holder) =>
          holder.rule !== finding.rule && weights.indexOf(holder.weight) <= weights.indexOf(finding.weight),
      );
    if (by) {
      suppressed.push({ ...finding, by: by.id });
      continue;
    }
    findings.push(finding);
    if (rankOf(finding.rule) > lastThatHides) continue;
    for (const { kind, id } of finding.causes) {
      const known = holders.get(`${kind} ${id}`);
      if (known) known.push(finding);
      else holders.set(`${kind} ${id}`, [finding]);
    }
  }
  return { findings, suppressed };
};
