import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import { refusalInState, type WorkState } from "../attempt/work-state.ts";
import { refuse } from "../refusal.ts";
import type { Act } from "./act.ts";
import { type ActorKind, isStaffKind } from "./actor.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";

/** What an act is held against before its own code runs. */
export interface Standing {
  actor: ActorKind;
  /** Whoever it is stands at the bench. */
  isAtBench: boolean;
  /** The state of the actor's own work on the bench. */
  state: WorkState;
  /** Assessed work lies open on the bench, whoever's it is. */
  isAssessing: boolean;
  /** A trainer has frozen the bench: whoever works at it waits. */
  isFrozen: boolean;
}

/** Why an act is not for this actor, in this state, or during assessed work; undefined where it is. */
export function refusalByTable<Name extends ActName>(
  { who, states, elsewhere, inAssessed, isRemote, whileFrozen }: Act<Name>,
  message: ActMessage<Name>,
  { actor, isAtBench, state, isAssessing, isFrozen }: Standing,
): Refusal | undefined {
  if (!who.includes(actor)) return refuse(actor === "nobody" ? "not-signed-in" : "not-for-you");
  if (!isAtBench && !isRemote) return refuse("own-screen-only");
  if (isFrozen && !whileFrozen && !isStaffKind(actor)) return refuse("bench-frozen");
  const inStates = typeof states === "function" ? states(message) : states;
  if (!inStates.includes(state)) return refuse(elsewhere ?? refusalInState[state]);
  if (inAssessed && isAssessing) return refuse(inAssessed);
  return undefined;
}
