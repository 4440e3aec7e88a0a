import type { z } from "zod";
import type { ActMessage, ActName } from "../../shared/protocol/acts.ts";
import type { RefusalCode } from "../../shared/protocol/said-keys.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import { type WorkState, workStates } from "../attempt/work-state.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import { refuse } from "../refusal.ts";
import type { Actor, ActorKind } from "./actor.ts";
import type { Situation } from "./situation.ts";
import type { Refusal, Reply } from "../../shared/protocol/reply.ts";

export type Decision = { ok: true; events: AttemptEvent[] } | Refusal;

/** What an act works with: the bench, who sends it, and the attempt on the bench where it is theirs. */
export interface Doing {
  core: BenchCore;
  actor: Actor;
  run: AttemptRun | undefined;
}

interface Rules<Name extends ActName> {
  /** What is sent with it. */
  schema: z.ZodType<ActMessage<Name>>;
  who: readonly ActorKind[];
  /** The states of the actor's own work in which it is done. */
  states: readonly WorkState[] | ((message: ActMessage<Name>) => readonly WorkState[]);
  /** What it is refused with in the other states, where the state itself does not say it. */
  elsewhere?: RefusalCode;
  /** What it is refused with while assessed work is open on the bench; undefined where it is not refused then. */
  inAssessed?: RefusalCode;
  /** It may also be asked for from the network; what is not is for the bench's own screen alone. */
  isRemote?: true;
  /** It has nothing to do with the board and does not wait for an act that does. */
  isFree?: true;
  /** Whoever works at the bench may do it while it is frozen. */
  whileFrozen?: true;
  /** What it keeps is the board at rest, never a plug half in. */
  isAtRest?: true;
}

/**
 * One thing a screen may ask for. `decides` turns it into events of the actor's own attempt, which are then
 * recorded: the same situation and message give the same events. `does` is for what moves the board or the bench.
 */
export type Act<Name extends ActName> = Rules<Name> &
  (
    | { decides: (situation: Situation, message: ActMessage<Name>) => Decision }
    | { does: (doing: Doing, message: ActMessage<Name>) => Reply | Promise<Reply> }
  );

/** Whatever the state of the work. */
export const always = workStates;
/** From the caution to the hand-in. */
export const whileOpen: readonly WorkState[] = ["caution", "make-dead", "wiring", "ready"];

export const events = (...made: AttemptEvent[]): Decision => ({ ok: true, events: made });

/** Does something with the actor's own attempt. */
export const onOwnRun =
  <Message>(does: (core: BenchCore, run: AttemptRun, message: Message) => Reply | Promise<Reply>) =>
  ({ core, run }: Doing, message: Message): Reply | Promise<Reply> =>
    run ? does(core, run, message) : refuse("no-attempt");
