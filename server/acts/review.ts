import { z } from "zod";
import { reviewAnswers } from "../../shared/protocol/decision-words.ts";
import { addToAttempt } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { attemptIdSchema, saidSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema, answer: z.enum(reviewAnswers), says: saidSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    review: z.infer<typeof schema>;
  }
}

/** A verifier has looked at a sealed decision: it is agreed, or its assessor is asked to look again. */
export const review: Act<"review"> = {
  schema,
  who: ["verifier"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt, answer, says }) =>
    addToAttempt(core, actor, attempt, ({ decision }, person) => {
      if (!decision) return refuse("decide-first");
      if (decision.sealedWallMs === null) return refuse("seal-first");
      if (answer === "look-again" && says === "") return refuse("reason-missing");
      return { type: "reviewed", content: { person, decision: decision.hash, answer, says } };
    }),
};
