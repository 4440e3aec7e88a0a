/** How far the wall clock can be trusted when an event was written. */
export type ClockState = "synced" | "battery" | "unsynced";

/** What happened, by name. Names go into the log and are never reused. */
export const eventTypes = [
  "boot",
  "attempt-started",
  "caution-accepted",
  "step-entered",
  "dead-step",
  "plan-answered",
  "sensed",
  "changed-while-off",
  "setting",
  "board-fault",
  "clock-jumped",
  "verdict-asked",
  "hint-given",
  "meter-acted",
  "reading-recorded",
  "expected-asked",
  "energised",
  "switched-off",
  "appliance-switched",
  "load-clock-moved",
  "load-run-cleared",
  "load-cable-chosen",
  "live-reading-recorded",
  "ready",
  "handed-in",
  "resumed",
  "attempt-left",
  "ready-ended",
  "dead-acted",
  "dead-declared",
  "resume-confirmed",
  "person-kept",
  "staff-signed-in",
  "network-chosen",
  "faults-hidden",
  "hidden-fault-ended",
  "faults-shown",
  "fault-named",
  "sealed",
  "restored",
  "own-work-declared",
  "observed",
  "decided",
  "decision-sealed",
  "released",
  "reviewed",
  "second-viewed",
  "sample-drawn",
  "criteria-chosen",
  "show-counted",
  "fault-set",
  "fault-unset",
  "decision-seen",
  "decision-shown",
  "decisions-taken",
  "scenario-kept",
  "scenario-withdrawn",
  "bench-frozen",
  "bench-thawed",
  "time-set",
  "bench-reset",
  "pack-sent",
  "pack-applied",
  "bench-paired",
  "bench-forgotten",
  "lead-joined",
  "lead-left",
] as const;
export type EventType = (typeof eventTypes)[number];

/**
 * One row of the log, in its final form. Rows are ordered by (benchId, boot, sequence) and by nothing else.
 * `bytes` are the exact bytes that were hashed: the UTF-8 of the event's JSON, never re-made from columns.
 */
export interface LogRow {
  benchId: string;
  /** Counts the starts of the bench. */
  boot: number;
  /** Counts the events of a boot, from 0. */
  sequence: number;
  attemptId: string | null;
  type: EventType;
  bytes: Uint8Array;
  /** SHA-256 of the row before, of zeros for a bench's first. */
  previousHash: Uint8Array;
  /** SHA-256 over previousHash, the ordering columns, the attempt, the type, the times and the bytes. */
  hash: Uint8Array;
  monotonicMs: number;
  wallMs: number;
  clockState: ClockState;
}
