import type { Refusal, Reply } from "../../shared/protocol/reply.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { type Actor, authorOf } from "../acts/actor.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import type { BenchCore, Records } from "../bench/bench-core.ts";
import { done, refuse } from "../refusal.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import type { DeskEvent } from "./desk-events.ts";
import { type DecisionTold, type DeskState, deskStateOf } from "./desk-state.ts";

/** An attempt as the desk works on it: whoever's it is, and whether or not it lies on the bench. */
export interface DeskAttempt {
  records: Records;
  record: AttemptRecord;
  state: DeskState;
  /** The decision that stands; undefined before the first. */
  decision: DecisionTold | undefined;
  /** What the bench found at the hand-in; undefined before it. */
  verdict: Verdict | undefined;
}

/** Reads an attempt for the desk. @throws StoreError */
export function deskAttempt({ parts }: BenchCore, attemptId: string): DeskAttempt | Refusal {
  const { records } = parts;
  if (!records || parts.isLogDamaged) return refuse("log-damaged");
  const record = records.attempts.byId(attemptId);
  if (!record) return refuse("no-such-attempt");
  const rows = records.logReader.rowsOfAttempt(attemptId);
  const state = deskStateOf(rows);
  const handIn = rows.map(eventOfRow).findLast((event) => event?.type === "handed-in");
  return {
    records,
    record,
    state,
    decision: state.decisions.at(-1),
    verdict: handIn?.type === "handed-in" ? handIn.content.verdict : undefined,
  };
}

/**
 * Puts on record what somebody adds to an attempt, where `decide` finds nothing against it. It never moves the work
 * that lies open on the bench.
 *
 * @throws StoreError; then nothing has changed.
 */
export function addToAttempt(
  core: BenchCore,
  actor: Actor,
  attemptId: string,
  decide: (attempt: DeskAttempt, person: string) => DeskEvent | Refusal,
): Reply {
  const attempt = deskAttempt(core, attemptId);
  if ("ok" in attempt) return attempt;
  // The learner would never see here what is added to it there, nor that bench's log what is added to it here.
  if (attempt.record.benchId !== attempt.records.log.benchId) return refuse("of-another-bench");
  const event = decide(attempt, actor.staff ?? "");
  if ("ok" in event) return event;
  attempt.records.log.append([{ attemptId, author: authorOf(actor), ...event }]);
  return done;
}

/** Assessed work that was handed in can be decided on; why another cannot. */
export function whyNotDecided({ record }: DeskAttempt): Refusal | undefined {
  if (record.mode !== "assessed") return refuse("not-assessed");
  return record.status === "handed-in" ? undefined : refuse("not-handed-in");
}
