import type { OutcomeView, ReleasedOutcome } from "../../shared/protocol/bench-view.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { huntResult } from "../attempt/hunt-result.ts";
import { loadAttempt } from "../attempt/load-attempt.ts";
import type { Records } from "../bench/bench-core.ts";
import { type Criterion, criteriaSchema } from "./criteria.ts";
import { deskStateOf, releasedDecision } from "./desk-state.ts";

/** The texts of the criteria as they were when somebody decided by them. */
function criteriaOf({ logReader }: Records, hash: string): readonly Criterion[] {
  const bytes = logReader.document(hash);
  if (!bytes) return [];
  const parsed = parseSafely(criteriaSchema, JSON.parse(Buffer.from(bytes).toString("utf8")));
  return parsed.success ? parsed.data.criteria : [];
}

/** What was released last of what was decided on an attempt, and when; undefined where nothing was. */
function releasedOf(
  records: Records,
  attemptId: string,
): Pick<ReleasedOutcome, "outcome" | "releasedWallMs" | "hunt"> | undefined {
  const rows = records.logReader.rowsOfAttempt(attemptId);
  const decision = releasedDecision(deskStateOf(rows));
  if (!decision || decision.releasedWallMs === null) return undefined;
  const texts = new Map(criteriaOf(records, decision.criteriaHash).map(({ id, text }) => [id, text]));
  const outcome: OutcomeView = {
    outcome: decision.outcome,
    says: decision.says,
    criteria: decision.criteria.map(({ criterion, answer, reason = "" }) => ({
      id: criterion,
      text: texts.get(criterion) ?? { en: criterion, pl: criterion },
      answer,
      reason,
    })),
    ...(decision.nextKind ? { nextKind: decision.nextKind } : {}),
    ...(decision.seenWallMs === null ? {} : { isSeen: true }),
  };
  const hunt = loadAttempt(attemptId, rows)?.hunt;
  return { outcome, releasedWallMs: decision.releasedWallMs, ...(hunt ? { hunt: huntResult(hunt) } : {}) };
}

/**
 * What the learner of an attempt may see of what people added to it: their own word, and the decision that was released
 * last. Nothing else of the desk ever goes to the bench.
 *
 * @throws StoreError
 */
export function toldToLearner(
  records: Records,
  attemptId: string,
): { isDeclared: boolean; outcome: OutcomeView | undefined } {
  const record = records.attempts.byId(attemptId);
  const isDeclared = record !== undefined && record.declaredWallMs !== null;
  // Nothing was ever decided: the rows need not be read.
  if (!record || record.decision === null) return { isDeclared, outcome: undefined };
  return { isDeclared, outcome: releasedOf(records, attemptId)?.outcome };
}

/** So many pieces of a learner's work are looked through for a decision, and so many are shown. */
const mostLooked = 20;
const mostShown = 5;

/** What is known of an attempt, and how many events told it. */
type Known = Map<string, { eventCount: number; released: ReturnType<typeof releasedOf> }>;
const mostKnown = 1_000;
const knownOf = new WeakMap<Records["logReader"], Known>();

/**
 * The decisions on a learner's assessed work that they may see, the last released first: also after the bench has moved
 * on to other work. @throws StoreError
 */
export function outcomesFor(records: Records, learner: string): ReleasedOutcome[] {
  const known = knownOf.get(records.logReader) ?? (new Map() as Known);
  knownOf.set(records.logReader, known);
  const { attempts } = records.attempts.page({ learner, mode: "assessed", isDecided: true }, mostLooked);
  return attempts
    .flatMap(({ attemptId, scenario, eventCount }): ReleasedOutcome[] => {
      const before = known.get(attemptId);
      const released = before?.eventCount === eventCount ? before.released : releasedOf(records, attemptId);
      if (known.size >= mostKnown) known.clear();
      known.set(attemptId, { eventCount, released });
      return released ? [{ attempt: attemptId, scenario, ...released }] : [];
    })
    .sort((a, b) => b.releasedWallMs - a.releasedWallMs)
    .slice(0, mostShown);
}
