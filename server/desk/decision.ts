import {
  type CriterionAnswer,
  type Outcome,
  type Proposal,
  ticks,
} from "../../shared/protocol/decision-words.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { refuse } from "../refusal.ts";
import { type Criteria, proposalFor } from "./criteria.ts";
import type { JudgedCriterion } from "./desk-events.ts";

/** What somebody answers for a criterion, as it is sent. */
export type GivenAnswer = Omit<JudgedCriterion, "proposed">;

const isOverride = (proposed: Proposal | null, answer: CriterionAnswer): boolean =>
  answer === "cannot-assess" || ((proposed === "met" || proposed === "not-yet") && proposed !== answer);

/**
 * The answers with the bench's proposals beside them, in the order of the criteria; or why they cannot be taken: each
 * criterion is answered once, what differs from the proposal has a reason, and what is met has all four ticks. Which of
 * them it is about is told by its number in their order, from 1.
 */
export function judgedCriteria(
  { criteria }: Criteria,
  verdict: Verdict,
  given: readonly GivenAnswer[],
): JudgedCriterion[] | Refusal {
  const byId = new Map(given.map((one) => [one.criterion, one]));
  if (given.length !== criteria.length || criteria.some(({ id }) => !byId.has(id)))
    return refuse("criteria-missing");
  const judged: JudgedCriterion[] = [];
  for (const [at, criterion] of criteria.entries()) {
    const one = byId.get(criterion.id);
    if (!one) return refuse("criteria-missing");
    const proposed = proposalFor(criterion, verdict);
    const which = { criterion: at + 1 };
    if (isOverride(proposed, one.answer) && (one.reason ?? "") === "")
      return refuse("criterion-reason-missing", which);
    if (one.answer === "met" && !ticks.every((tick) => one[tick])) return refuse("ticks-missing", which);
    judged.push({ ...one, proposed });
  }
  return judged;
}

/** What an attempt comes to: all of it has to be met. */
export function outcomeOf(criteria: readonly Pick<JudgedCriterion, "answer">[]): Outcome {
  const answers = criteria.map(({ answer }) => answer);
  if (answers.includes("not-yet")) return "not-yet";
  return answers.includes("cannot-assess") ? "cannot-assess" : "met";
}

/** How many criteria were answered otherwise than the bench proposed. */
export const overrideCount = (criteria: readonly JudgedCriterion[]): number =>
  criteria.filter(({ proposed, answer }) => isOverride(proposed, answer)).length;
