import type { AttemptKind, Mode } from "../../shared/protocol/attempt-words.ts";
import type { Outcome, Proposal, ReviewAnswer } from "../../shared/protocol/decision-words.ts";
import type { DeskRow } from "../../shared/protocol/desk-view.ts";
import { benchNameOf } from "../bench/bench-name.ts";
import type { BenchCore, BenchParts } from "../bench/bench-core.ts";
import { titleOf } from "../exercise/exercises.ts";
import type { Staff } from "../people/person.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";

type Named = Pick<BenchParts, "people" | "scenarios" | "records">;

/** Somebody by name; whoever was erased by the end of their id. */
export const nameOf = ({ people }: Pick<Named, "people">, id: string): string =>
  people.toldOf(id)?.name ?? `? ${id.slice(-4)}`;

/** A record as a line of a list; with `isBlind` without what was decided. */
export function deskRow(parts: Named, record: AttemptRecord, isBlind = false): DeskRow {
  return {
    id: record.attemptId,
    otherBench: record.benchId === parts.records?.log.benchId ? null : benchNameOf(record.benchId),
    learner: record.learner === null ? "" : nameOf(parts, record.learner),
    scenario: record.scenario,
    title: titleOf(parts.scenarios, record.scenario),
    // The log was written through schemas that hold these to their words.
    mode: record.mode as Mode,
    kind: record.kind as AttemptKind,
    status: record.status,
    startedWallMs: record.startedWallMs,
    readyWallMs: record.readyWallMs,
    handedInWallMs: record.handedInWallMs,
    tries: record.tryCount,
    proposal: record.proposal as Proposal | null,
    isDecided: record.decision !== null,
    decision: isBlind ? null : (record.decision as Outcome | null),
    isSealed: record.sealedWallMs !== null,
    isReleased: record.releasedWallMs !== null,
    review: isBlind ? null : (record.review as ReviewAnswer | null),
  };
}

/**
 * A record as a line of a list for somebody of the staff. Whoever may still give a blind view of it is told that it was
 * decided, and not how.
 */
export function rowFor(
  { parts, shown }: Pick<BenchCore, "parts" | "shown">,
  me: Staff,
  record: AttemptRecord,
): DeskRow {
  const { attemptId, decision, decidedBy, decidedWallMs } = record;
  const mayView = me.role === "assessor" || me.role === "verifier";
  if (!mayView || decision === null || decidedBy === me.id) return deskRow(parts, record);
  return deskRow(parts, record, !shown.has(me.id, attemptId, decidedWallMs ?? 0));
}
