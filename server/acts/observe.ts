import { z } from "zod";
import { addToAttempt } from "../desk/on-attempt.ts";
import { type Act, always } from "./act.ts";
import { attemptIdSchema, saidSchema } from "./desk-schemas.ts";

const schema = z.strictObject({
  attempt: attemptIdSchema,
  seen: saidSchema.min(1),
  observerSays: saidSchema,
  learnerSays: saidSchema,
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    observe: z.infer<typeof schema>;
  }
}

/** Writes down what was seen of an attempt, and what both sides say to it. */
export const observe: Act<"observe"> = {
  schema,
  who: ["trainer", "assessor"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt, ...content }) =>
    addToAttempt(core, actor, attempt, (_attempt, person) => ({
      type: "observed",
      content: { person, ...content },
    })),
};
