import { refuse, type Refusal } from "../refusal.ts";
import type { AttemptState } from "./attempt-state.ts";
import { isStepOpen } from "./steps.ts";

/** Why work on an attempt is refused now, or undefined where it may go on. */
export function mayWork(state: AttemptState): Refusal | undefined {
  if (state.status === "handed-in" || state.status === "left") return refuse("handed-in");
  return state.isTrainerNeeded ? refuse("trainer-confirms") : undefined;
}

/**
 * Why the learner may not touch a lead now, or undefined where they may: the caution first, an existing circuit
 * made dead, and nothing changed while a check is waited for. On a real board hands cannot be refused; there
 * the log says what was done when.
 */
export function mayWire(state: AttemptState): Refusal | undefined {
  const refused = mayWork(state);
  if (refused) return refused;
  if (state.step === "caution") return refuse("caution-first");
  if (state.status === "ready") return refuse("frozen");
  return isStepOpen(state, "wire") ? undefined : refuse("make-dead-first");
}
