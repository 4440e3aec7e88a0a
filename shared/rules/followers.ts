import type { Rule } from "./rule.ts";
import { suppress } from "./suppress.ts";
import type { Finding, Suppressed, Verdict } from "./verdict.ts";

/**
 * What a verdict keeps back because of some of its findings, and would say were they mended alone. What only comes of
 * them, or is mended with them at the same station, goes with them and is not among these.
 */
export const followers = (
  { findings, suppressed }: Pick<Verdict, "findings" | "suppressed">,
  mended: readonly Finding[],
  pack: readonly Rule[],
): Suppressed[] => {
  const ruleOf = new Map(pack.map((rule) => [rule.id, rule]));
  const goes = new Set(mended.map(({ id }) => id));
  const goesWith = new Set(
    suppressed
      .filter(
        ({ by, rule }) =>
          goes.has(by) &&
          (ruleOf.get(rule)?.isOutcome === true ||
            mended.some((one) => one.id === by && ruleOf.get(one.rule)?.explains?.includes(rule) === true)),
      )
      .map(({ id }) => id),
  );
  const left = [...findings, ...suppressed].filter(({ id }) => !goes.has(id) && !goesWith.has(id));
  const shown = new Set(suppress(left, pack).findings.map(({ id }) => id));
  return suppressed.filter(({ id }) => shown.has(id));
};
