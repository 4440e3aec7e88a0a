import { refuse } from "../refusal.ts";
import type { AttemptState } from "./attempt-state.ts";
import { refusalInState, workStateOf } from "./work-state.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

/** Why the learner may not touch a lead now, or undefined where they may. */
export function mayWire(state: AttemptState): Refusal | undefined {
  const at = workStateOf(state);
  return at === "wiring" ? undefined : refuse(refusalInState[at]);
}
