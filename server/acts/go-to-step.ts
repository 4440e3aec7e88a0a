import { z } from "zod";
import { steps } from "../../shared/protocol/attempt-words.ts";
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

/** Looks at another step of the work. */
export const goToStep: Act<"go-to-step"> = {
  schema,
  who: workers,
  states: ["make-dead", "wiring", "ready"],
  decides: ({ state }, { step }) => {
    if (step === state.step) return events();
    // To look at a step is not to work on: who is ready for check stays so.
    const waiting = state.status === "ready" ? { isWaiting: true as const } : {};
    if (isStepOpen(state, step)) return events({ type: "step-entered", content: { step, ...waiting } });
    if (!stepsOf(state).includes(step)) return refuse("locked");
    return refuse(step === "load" && isStepOpen(state, "test") ? "energise-first" : "make-dead-first");
  },
};
