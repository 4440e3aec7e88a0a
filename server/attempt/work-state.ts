import type { RefusalCode } from "../../shared/protocol/said-keys.ts";
import type { AttemptState } from "./attempt-state.ts";
import { isStepOpen } from "./steps.ts";

/**
 * How far somebody's work on the bench is, as it decides what they may do: there is none; the caution is not
 * accepted; an existing circuit is not made dead; leads may be moved; a check is waited for; the bench was off in
 * the middle of assessed work and waits for a trainer; it is handed in.
 */
export const workStates = [
  "none",
  "caution",
  "make-dead",
  "wiring",
  "ready",
  "interrupted",
  "handed-in",
] as const;
export type WorkState = (typeof workStates)[number];

/** The state of work; undefined where there is none. On a real board hands cannot be refused; the log has it. */
export function workStateOf(state: AttemptState | undefined): WorkState {
  if (!state) return "none";
  if (state.status === "handed-in" || state.status === "left") return "handed-in";
  if (state.isTrainerNeeded) return "interrupted";
  if (state.step === "caution") return "caution";
  if (state.status === "ready") return "ready";
  return isStepOpen(state, "wire") ? "wiring" : "make-dead";
}

/** Why something that belongs to other states is refused in this one. */
export const refusalInState: Readonly<Record<WorkState, RefusalCode>> = {
  none: "no-attempt",
  caution: "caution-first",
  "make-dead": "make-dead-first",
  wiring: "attempt-open",
  ready: "frozen",
  interrupted: "trainer-confirms",
  "handed-in": "handed-in",
};
