import { deadSteps, type Step } from "../../shared/protocol/attempt-words.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { AttemptState } from "./attempt-state.ts";

type StepStateOf = Pick<
  AttemptState,
  "isExistingCircuit" | "entered" | "status" | "isTrainerNeeded" | "meter"
> &
  DeadStateOf;

type DeadStateOf = Pick<AttemptState, "mode" | "dead" | "deadCounted" | "isDeadDeclared">;

/** The steps of an attempt in their order: make dead only where there is an existing circuit. */
export const stepsOf = ({ isExistingCircuit }: Pick<AttemptState, "isExistingCircuit">): Step[] => [
  ...(isExistingCircuit ? (["make-dead"] as const) : []),
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
      return !state.isExistingCircuit || isMadeDead(state);
    case "load":
      return (!state.isExistingCircuit || isMadeDead(state)) && state.meter.supply === "holds";
  }
}

/** Each step with its state as it stands along the edge of the screen. */
export function stepStates(
  state: StepStateOf & Pick<AttemptState, "step" | "plan" | "asked">,
  planQuestionCount: number,
): AttemptView["steps"] {
  // A tick stands over no fault; in assessed work it says no more than that the work is over.
  const isOver = state.status === "ready" || state.status === "handed-in";
  const isDone = (step: Step): boolean => {
    if (step === "make-dead") return isMadeDead(state);
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
