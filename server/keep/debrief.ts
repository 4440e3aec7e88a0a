import { classShares, type ClassShare, type DebriefView } from "../../shared/protocol/keep-view.ts";
import type { RuleId } from "../../shared/rules/rule.ts";
import { wordings } from "../../shared/rules/wording/languages.ts";
import type { Language } from "../../shared/text/languages.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { trippedIn } from "../progress/progress-of.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";

/** With fewer than these in the class, or on a line, it could be known who is meant. */
const leastInClass = 5;
const leastOnLine = 3;
/** So many lines can be read from the back of a room. */
const mostLines = 6;
const mostAttempts = 1000;

/** Assessed work tells its learner nothing before the decision is released, and so the class neither. */
const mayBeTold = ({ mode, releasedWallMs }: AttemptRecord): boolean =>
  mode === "practice" || (mode === "assessed" && releasedWallMs !== null);

const [most, half, some] = classShares;

/** How much of a class so many are, in words: figures could be counted back to somebody. */
export const shareOf = (count: number, classSize: number): ClassShare =>
  count * 3 >= classSize * 2 ? most : count * 5 >= classSize * 2 ? half : some;

/** Which rules how many learners tripped over, without saying who; nothing where that would tell of somebody. */
export function debriefOf(
  trippedBy: ReadonlyMap<string, ReadonlySet<RuleId>>,
  language: Language,
): DebriefView {
  const classSize = trippedBy.size;
  if (classSize < leastInClass) return { isTooFew: true, lines: [] };
  const counts = new Map<RuleId, number>();
  for (const rules of trippedBy.values())
    for (const rule of rules) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  const lines = [...counts]
    .filter(([, count]) => count >= leastOnLine)
    .sort(([ruleA, a], [ruleB, b]) => b - a || (ruleA < ruleB ? -1 : 1))
    .slice(0, mostLines)
    .map(([rule, count]) => ({
      rule,
      title: wordings[language].catalogue[rule].title,
      share: shareOf(count, classSize),
    }));
  return { isTooFew: false, lines };
}

/** What the class tripped over since a time. Guests are not of the class. @throws StoreError */
export function debriefSince({ parts }: BenchCore, fromWallMs: number, language: Language): DebriefView {
  const { records } = parts;
  const trippedBy = new Map<string, Set<RuleId>>();
  const { attempts } = records?.attempts.page({ fromWallMs }, mostAttempts) ?? { attempts: [] };
  for (const record of attempts) {
    if (!records || record.learner === null || !mayBeTold(record)) continue;
    const known = trippedBy.get(record.learner) ?? new Set<RuleId>();
    for (const rule of trippedIn(records, record)) known.add(rule);
    trippedBy.set(record.learner, known);
  }
  return debriefOf(trippedBy, language);
}
