import { deadSteps, type DeadStep, type Step } from "../../shared/protocol/commands.schema.ts";
import type { AttemptView } from "../../shared/protocol/bench-view.ts";
import type { AttemptState } from "./attempt-state.ts";

type StepStateOf = Pick<
  AttemptState,
  "isExistingCircuit" | "dead" | "mode" | "entered" | "status" | "isTrainerNeeded"
>;

/** The steps of an attempt in their order: make dead only where there is an existing circuit. */
export const stepsOf = ({ isExistingCircuit }: Pick<AttemptState, "isExistingCircuit">): Step[] => [
  ...(isExistingCircuit ? (["make-dead"] as const) : []),
  "plan",
  "wire",
  "test",
  "load",
  "hand-in",
];

/** The first step of making dead that is not done yet. */
export const nextDeadStep = (state: Pick<AttemptState, "dead">): DeadStep | undefined =>
  deadSteps.find((step) => !state.dead.some((done) => done.step === step));

/** True for a step taken while one that comes before it is not done. */
export const isOutOfOrder = (state: Pick<AttemptState, "dead">, step: DeadStep): boolean =>
  deadSteps
    .slice(0, deadSteps.indexOf(step))
    .some((before) => !state.dead.some((done) => done.step === before && !done.isOutOfOrder));

/**
 * True where the circuit counts as made dead: every step done, each after those before it. In an assessed
 * attempt the order is not held against the learner here, that would tell; it is in the log for the assessor.
 */
export const isMadeDead = (state: Pick<AttemptState, "dead" | "mode">): boolean =>
  nextDeadStep(state) === undefined &&
  (state.mode === "assessed" || state.dead.every((done) => !done.isOutOfOrder));

/** True where a learner may go to a step now. Load stays locked until tests are on record and satisfactory. */
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
      return false;
  }
}

/** Each step with its state as it stands along the edge of the screen. */
export function stepStates(
  state: StepStateOf & Pick<AttemptState, "step" | "plan">,
  planQuestionCount: number,
): AttemptView["steps"] {
  const isDone = (step: Step): boolean => {
    if (step === "make-dead") return isMadeDead(state);
    if (step === "plan") return planQuestionCount > 0 && Object.keys(state.plan).length >= planQuestionCount;
    if (step === "wire") return state.status === "ready" || state.status === "handed-in";
    return step === "hand-in" && state.status === "handed-in";
  };
  return stepsOf(state).map((step) => ({
    step,
    state: step === state.step ? "now" : isDone(step) ? "done" : isStepOpen(state, step) ? "open" : "locked",
  }));
}
