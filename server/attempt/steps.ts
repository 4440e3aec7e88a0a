import { deadSteps, type Step } from "../../shared/protocol/attempt-words.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { AttemptState } from "./attempt-state.ts";

type StepStateOf = Pick<
  AttemptState,
  "isExistingCircuit" | "entered" | "status" | "isTrainerNeeded" | "meter" | "hasBeenLive"
> &
  DeadStateOf;

type DeadStateOf = Pick<AttemptState, "mode" | "dead" | "deadCounted" | "isDeadDeclared">;

/** True where there is a circuit to make dead: one that was there before, or one that the learner has switched on. */
export const hasMakeDead = ({
  isExistingCircuit,
  hasBeenLive,
}: Pick<AttemptState, "isExistingCircuit" | "hasBeenLive">): boolean => isExistingCircuit || hasBeenLive;

/** The steps of an attempt in their order: make dead only where there is a circuit to make dead. */
export const stepsOf = (state: Pick<AttemptState, "isExistingCircuit" | "hasBeenLive">): Step[] => [
  ...(hasMakeDead(state) ? (["make-dead"] as const) : []),
  "plan",
  "wire",
  "test",
  "load",
  "hand-in",
];

/**
 * True where the circuit counts as made dead: every step of the sequence counts. In an assessed attempt no list is
 * kept for the learner, that would tell: they say that it is dead, and what was done is in the log for the assessor.
 */
export function isMadeDead({ mode, dead, deadCounted, isDeadDeclared }: DeadStateOf): boolean {
  if (isDeadDeclared || deadCounted.length === deadSteps.length) return true;
  // As it was written before it was acted on a picture.
  return (
    dead.length === deadSteps.length &&
    (mode === "assessed" || dead.every(({ isOutOfOrder }) => !isOutOfOrder))
  );
}

/** True where a learner may go to a step now. */
export function isStepOpen(state: StepStateOf, step: Step): boolean {
  if (state.isTrainerNeeded || state.status === "handed-in" || state.status === "left") return false;
  if (step === "caution") return true;
  const isCautionAccepted = state.entered.some((entered) => entered !== "caution");
  if (!isCautionAccepted || !stepsOf(state).includes(step)) return false;
  switch (step) {
    case "make-dead":
    case "plan":
      return true;
    case "wire":
    case "test":
    case "hand-in":
      return isWorkOpen(state);
    case "load":
      return isWorkOpen(state) && state.meter.supply === "holds";
  }
}

/** Once it was switched on it had been made dead before: what hands may then do is said by `mayTouch`. */
const isWorkOpen = (state: StepStateOf): boolean =>
  !state.isExistingCircuit || state.hasBeenLive || isMadeDead(state);

/** Each step with its state as it stands along the edge of the screen. */
export function stepStates(
  state: StepStateOf & Pick<AttemptState, "step" | "plan" | "asked">,
  planQuestionCount: number,
): AttemptView["steps"] {
  // A tick stands over no fault; in assessed work it says no more than that the work is over.
  const isOver = state.status === "ready" || state.status === "handed-in";
  const isDone = (step: Step): boolean => {
    if (step === "make-dead") return isMadeDead(state) && !state.meter.isUnproved;
    if (step === "plan") return planQuestionCount > 0 && Object.keys(state.plan).length >= planQuestionCount;
    if (step === "wire")
      return isOver && (state.mode === "assessed" || state.asked?.verdict.proposal === "met");
    return step === "hand-in" && state.status === "handed-in";
  };
  return stepsOf(state).map((step) => ({
    step,
    state: step === state.step ? "now" : isDone(step) ? "done" : isStepOpen(state, step) ? "open" : "locked",
  }));
}
