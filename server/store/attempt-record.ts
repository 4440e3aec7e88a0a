import type { LogRow } from "../../shared/protocol/log-row.ts";
import { eventOfRow } from "../attempt/load-attempt.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import { overrideCount } from "../desk/decision.ts";
import { type DeskContent, type DeskEvent, deskEventOfRow } from "../desk/desk-events.ts";

/** An attempt as a list shows it: one row of the table of attempts, told by the log alone. */
export interface AttemptRecord {
  attemptId: string;
  benchId: string;
  /** Where in the log it starts; lists are ordered by bench, boot and sequence, never by a clock. */
  startBoot: number;
  startSequence: number;
  /** Opaque; null for a guest. */
  learner: string | null;
  scenario: string;
  mode: string;
  kind: string;
  /** What was handed in stays so, also when it has been cleared from the screen. */
  status: "open" | "ready" | "handed-in" | "left";
  startedWallMs: number;
  lastWallMs: number;
  /** When it was last called ready for check; null while it is not and was never handed in as ready. */
  readyWallMs: number | null;
  handedInWallMs: number | null;
  eventCount: number;
  tryCount: number;
  hintCount: number;
  /** Findings at the hand-in, by weight; null before it. */
  dangerCount: number | null;
  fixCount: number | null;
  queryCount: number | null;
  noteCount: number | null;
  /** What the bench proposed at the hand-in. */
  proposal: string | null;
  /** What a person decided, who and when; null until somebody has. */
  decision: string | null;
  decidedBy: string | null;
  decidedWallMs: number | null;
  /** On how many criteria that differs from what the bench proposed. */
  overrideCount: number | null;
  /** What the learner may do next at this task, by the decision. */
  nextKind: string | null;
  /** When the learner said that the work is their own. */
  declaredWallMs: number | null;
  /** Of the decision that stands: when it was sealed, and when the learner could first see it. */
  sealedWallMs: number | null;
  releasedWallMs: number | null;
  /** What the verifier said last, and when. */
  review: string | null;
  reviewedWallMs: number | null;
}

/** The attempt that stands on a bench: the one that was started there last. */
export interface BenchWork {
  attemptId: string;
  /** False once it was left: the board is as it was, and the screen is free. */
  isOnBench: boolean;
}

/** Raised when the same log makes other records; then they are made anew at the next start. */
export const attemptTableVersion = 2;

/** The events that change more of a record than its count and its last time. */
const telling = new Set([
  "attempt-started",
  "step-entered",
  "verdict-asked",
  "hint-given",
  "ready",
  "ready-ended",
  "handed-in",
  "attempt-left",
]);

const eventOf = (row: LogRow): AttemptEvent | DeskEvent | undefined =>
  telling.has(row.type) ? eventOfRow(row) : deskEventOfRow(row);

type Content<Type extends AttemptEvent["type"]> = Extract<AttemptEvent, { type: Type }>["content"];

const startedRecord = (row: LogRow, attemptId: string, content: Content<"attempt-started">) => ({
  attemptId,
  benchId: row.benchId,
  startBoot: row.boot,
  startSequence: row.sequence,
  learner: content.learner,
  scenario: content.scenario,
  mode: content.mode,
  kind: content.kind,
  status: "open" as const,
  startedWallMs: row.wallMs,
  lastWallMs: row.wallMs,
  readyWallMs: null,
  handedInWallMs: null,
  eventCount: 1,
  tryCount: 0,
  hintCount: 0,
  dangerCount: null,
  fixCount: null,
  queryCount: null,
  noteCount: null,
  proposal: null,
  decision: null,
  decidedBy: null,
  decidedWallMs: null,
  overrideCount: null,
  nextKind: null,
  declaredWallMs: null,
  sealedWallMs: null,
  releasedWallMs: null,
  review: null,
  reviewedWallMs: null,
});

const isOver = ({ status }: AttemptRecord): boolean => status === "handed-in" || status === "left";

const notReady = (record: AttemptRecord): AttemptRecord =>
  isOver(record) ? record : { ...record, status: "open", readyWallMs: null };

function handedIn(record: AttemptRecord, row: LogRow, { verdict }: Content<"handed-in">): AttemptRecord {
  // A verdict is kept as the program of its day made it.
  const findings: readonly unknown[] = Array.isArray(verdict.findings) ? verdict.findings : [];
  const countOf = (weight: string): number =>
    findings.filter((finding) => (finding as { weight?: unknown } | null)?.weight === weight).length;
  const proposal: unknown = verdict.proposal;
  return {
    ...record,
    status: "handed-in",
    handedInWallMs: row.wallMs,
    dangerCount: countOf("danger"),
    fixCount: countOf("fix"),
    queryCount: countOf("query"),
    noteCount: countOf("note"),
    proposal: typeof proposal === "string" ? proposal : null,
  };
}

/** A decision that takes the place of another is neither sealed nor released nor reviewed. */
const decided = (
  record: AttemptRecord,
  { wallMs }: LogRow,
  { outcome, person, criteria, nextKind }: DeskContent<"decided">,
): AttemptRecord => ({
  ...record,
  decision: outcome,
  decidedBy: person,
  decidedWallMs: wallMs,
  overrideCount: overrideCount(criteria),
  nextKind: nextKind ?? null,
  sealedWallMs: null,
  releasedWallMs: null,
  review: null,
  reviewedWallMs: null,
});

/**
 * What the record of an attempt is after a row of the log; undefined before its start. Pure, so that a log gives
 * the same records however often they are made anew.
 */
export function recordAfter(record: AttemptRecord | undefined, row: LogRow): AttemptRecord | undefined {
  if (row.attemptId === null) return record;
  const event = eventOf(row);
  if (event?.type === "attempt-started") return startedRecord(row, row.attemptId, event.content);
  if (!record) return undefined;
  const counted = { ...record, eventCount: record.eventCount + 1, lastWallMs: row.wallMs };
  switch (event?.type) {
    case "step-entered":
      return event.content.isWaiting ? counted : notReady(counted);
    case "verdict-asked":
      return { ...counted, tryCount: counted.tryCount + (event.content.isTry ? 1 : 0) };
    case "hint-given":
      return { ...counted, hintCount: counted.hintCount + 1 };
    case "ready":
      return isOver(counted) ? counted : { ...counted, status: "ready", readyWallMs: row.wallMs };
    case "ready-ended":
      return notReady(counted);
    case "handed-in":
      return handedIn(counted, row, event.content);
    case "attempt-left":
      return isOver(counted) ? counted : { ...counted, status: "left", readyWallMs: null };
    case "own-work-declared":
      return { ...counted, declaredWallMs: counted.declaredWallMs ?? row.wallMs };
    case "decided":
      return decided(counted, row, event.content);
    case "decision-sealed":
      return { ...counted, sealedWallMs: row.wallMs };
    case "released":
      return { ...counted, releasedWallMs: row.wallMs };
    // To look at work is not to work on it: how long somebody is kept is counted from their own last time.
    case "decision-shown":
      return { ...counted, lastWallMs: record.lastWallMs };
    case "reviewed":
      return { ...counted, review: event.content.answer, reviewedWallMs: row.wallMs };
    default:
      return counted;
  }
}

/**
 * Which attempt stands on the bench of a row, after it. Only a start puts one there and only its own leaving takes
 * it away: what is written to an older attempt later moves nobody's work.
 */
export function workAfter(work: BenchWork | undefined, row: LogRow): BenchWork | undefined {
  if (row.attemptId === null) return work;
  if (row.type === "attempt-started")
    return eventOf(row) ? { attemptId: row.attemptId, isOnBench: true } : work;
  if (row.type !== "attempt-left" || work?.attemptId !== row.attemptId || !eventOf(row)) return work;
  return { ...work, isOnBench: false };
}
