import { z } from "zod";
import { type Step, steps } from "../../shared/protocol/attempt-words.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { isStepOpen, stepsOf } from "../attempt/steps.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ step: z.enum(steps) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "go-to-step": z.infer<typeof schema>;
  }
}

/** Assessed work on the board begins with the first of these steps, so that all that is found there is the learner's. */
const workingSteps: readonly Step[] = ["wire", "test", "hand-in"];

const beginsWork = ({ mode, entered }: AttemptState, step: Step): boolean =>
  mode === "assessed" && workingSteps.includes(step) && !workingSteps.some((one) => entered.includes(one));

/** Looks at another step of the work. */
export const goToStep: Act<"go-to-step"> = {
  schema,
  who: workers,
  states: ["make-dead", "wiring", "ready"],
  decides: ({ state, boardAtStart }, { step }) => {
    if (step === state.step) return events();
    // To look at a step is not to work on: who is ready for check stays so.
    const waiting = state.status === "ready" ? { isWaiting: true as const } : {};
    if (isStepOpen(state, step)) {
      const begin = beginsWork(state, step) ? boardAtStart() : undefined;
      if (begin && begin.begunOn === undefined)
        return refuse("board-first", { outCount: begin.outCount, inCount: begin.inCount });
      return events({ type: "step-entered", content: { step, ...waiting, ...begin } });
    }
    if (!stepsOf(state).includes(step)) return refuse("locked");
    return refuse(step === "load" && isStepOpen(state, "test") ? "energise-first" : "make-dead-first");
  },
};
