import { refuse } from "../refusal.ts";
import type { AttemptState } from "./attempt-state.ts";
import { refusalInState, workStateOf } from "./work-state.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

/** Why the learner may not touch a lead now, or undefined where they may. */
export function mayWire(state: AttemptState): Refusal | undefined {
  const at = workStateOf(state);
  return at === "wiring" ? mayTouch(state) : refuse(refusalInState[at]);
}

/**
 * Why no hand and no dead test belongs at the circuit: it is live, or was and has not been proved dead since (HSE
 * GS38; Electricity at Work Regulations 1989, regulation 13). Undefined where it is dead.
 */
export function mayTouch({ meter }: Pick<AttemptState, "meter">): Refusal | undefined {
  if (meter.supply === "holds") return refuse("switch-off-first");
  return meter.isUnproved ? refuse("dead-again-first") : undefined;
}
