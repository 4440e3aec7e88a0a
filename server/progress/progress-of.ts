import type { ProgressView } from "../../shared/protocol/progress-view.ts";
import { type RuleId, ruleIds } from "../../shared/rules/rule.ts";
import { en } from "../../shared/rules/wording/en.ts";
import { pl } from "../../shared/rules/wording/pl.ts";
import type { Judge } from "../../shared/scenario/answer-misses.ts";
import { rulesTaught } from "../../shared/scenario/rules-taught.ts";
import type { Language } from "../../shared/text/languages.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import type { Records } from "../bench/bench-core.ts";
import { rulesOfExercise, titleOf } from "../exercise/exercises.ts";
import type { ScenarioKit } from "../library.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import { dueRules, type Go, rulePractice, taskFor } from "./rule-practice.ts";

const catalogues = { en, pl };
/** So many goes are looked back at; what a learner did before is no measure of what they can do now. */
const mostGoes = 100;
const shownGoes = 20;
const nextCount = 3;

/** So many attempts are kept in mind; then it begins anew. */
const mostKnown = 1_000;
/** What each attempt tripped over, and how many events told it. */
type Known = Map<string, { eventCount: number; tripped: readonly RuleId[] }>;
const knownOf = new WeakMap<Records["logReader"], Known>();

export interface ProgressParts {
  records: Pick<Records, "attempts" | "logReader">;
  kits: ReadonlyMap<string, ScenarioKit>;
  judge: Judge;
  /** Tasks that may be begun now: they fit the board and are not held back. */
  open: ReadonlySet<string>;
  learner: string;
  language: Language;
  nowMs: number;
}

/**
 * What a learner has practised, which rules they trip over and what to practise next, out of the log. Practice alone:
 * what the bench found in assessed work is told by whoever decides.
 */
export function progressOf(parts: ProgressParts): ProgressView {
  const { records, kits, judge, open, learner, language, nowMs } = parts;
  const { attempts } = records.attempts.page({ learner, mode: "practice" }, mostGoes);
  const goes = attempts
    .filter(({ status }) => status === "handed-in" || status === "left")
    .toReversed()
    .map((record): Go => {
      return {
        scenario: record.scenario,
        endedWallMs: record.handedInWallMs ?? record.lastWallMs,
        outcome: outcomeOf(record),
        tripped: trippedIn(records, record),
      };
    });
  const taught = new Map([...kits.values()].map(({ scenario }) => [scenario.id, rulesTaught(scenario)]));
  const practice = rulePractice(goes, (scenario) => taught.get(scenario) ?? rulesOfExercise(scenario, judge));
  const tasks = [...kits.values()]
    .filter(({ scenario }) => open.has(scenario.id))
    .map(({ scenario }) => ({
      id: scenario.id,
      level: scenario.level,
      rules: taught.get(scenario.id) ?? [],
    }));
  const ruleTitle = (rule: RuleId): string => catalogues[language][rule].title;
  const next: ProgressView["next"] = [];
  for (const { rule } of dueRules(practice, nowMs)) {
    // A task that was proposed already practises this rule too, or another one does.
    const scenario = taskFor(
      rule,
      tasks.filter(({ id }) => !next.some((one) => one.scenario === id)),
      goes,
    );
    if (scenario !== undefined && next.length < nextCount)
      next.push({ rule, title: ruleTitle(rule), scenario });
  }
  return {
    goes: goes
      .slice(-shownGoes)
      .toReversed()
      .map(({ scenario, endedWallMs, outcome }) => ({
        scenario,
        title: titleOf({ kits }, scenario)?.[language] ?? scenario,
        ...{ endedWallMs, outcome },
      })),
    rules: practice.map(({ rule, trippedCount, keptCount, isTripping, dueWallMs }) => ({
      ...{ rule, title: ruleTitle(rule), trippedCount, keptCount },
      ...{ isTripping, dueWallMs },
    })),
    next,
  };
}

function outcomeOf({ status, proposal }: AttemptRecord): Go["outcome"] {
  if (status !== "handed-in") return "left";
  return proposal === "met" || proposal === "not-yet" ? proposal : "cannot-say";
}

/** The rules that any verdict of an attempt found broken. An attempt that is over has the same for ever. */
export function trippedIn({ logReader }: ProgressParts["records"], record: AttemptRecord): readonly RuleId[] {
  const { attemptId, eventCount } = record;
  const known = knownOf.get(logReader) ?? (new Map() as Known);
  knownOf.set(logReader, known);
  const before = known.get(attemptId);
  if (before?.eventCount === eventCount) return before.tripped;
  const found = new Set<string>();
  for (const row of logReader.rowsOfAttempt(attemptId)) {
    if (row.type !== "verdict-asked" && row.type !== "handed-in") continue;
    const event = eventOfRow(row);
    if (event?.type !== "verdict-asked" && event?.type !== "handed-in") continue;
    // A verdict is kept as the program of its day made it.
    const findings: unknown = event.content.verdict.findings;
    for (const finding of Array.isArray(findings) ? findings : []) {
      const { rule, weight } = (finding ?? {}) as { rule?: unknown; weight?: unknown };
      if (typeof rule === "string" && (weight === "danger" || weight === "fix")) found.add(rule);
    }
  }
  const tripped = ruleIds.filter((rule) => found.has(rule));
  if (known.size >= mostKnown) known.clear();
  known.set(attemptId, { eventCount, tripped });
  return tripped;
}
