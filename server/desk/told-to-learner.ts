import type { OutcomeView } from "../../shared/protocol/bench-view.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
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
  const decision = releasedDecision(deskStateOf(records.logReader.rowsOfAttempt(attemptId)));
  if (!decision) return { isDeclared, outcome: undefined };
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
  };
  return { isDeclared, outcome };
}
