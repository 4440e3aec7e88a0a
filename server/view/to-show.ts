import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { PlanSheet } from "../attempt/plan-sheet.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { BenchView, OutcomeView } from "../../shared/protocol/bench-view.ts";

/** Everything there is to show of an attempt, whether or not a screen may see it. */
export interface AttemptToShow {
  run: AttemptRun;
  plan: PlanSheet;
  sensed: SensedState | undefined;
  /** The board is a real one with two probe leads. */
  hasProbeLeads?: boolean;
  /** False while a plug may be half in. */
  isSettled: boolean;
  canUndo: boolean;
  /** A verdict was asked for and waits for the board to be at rest. */
  isAsked: boolean;
  /** Practice: findings all the time, or when they are asked for. */
  findings: "asked" | "live";
  /** What people added to assessed work that was handed in, as far as its learner may see it. */
  told?: { isDeclared: boolean; outcome: OutcomeView | undefined };
}

/** Everything there is to show of a bench. What it says of the bench itself may be seen by all. */
export interface BenchToShow {
  bench: Omit<BenchView, "attempt">;
  /** Assessed work lies open on the bench, whoever stands at it. */
  isAssessing: boolean;
  attempt: AttemptToShow | undefined;
}
