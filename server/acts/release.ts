import { z } from "zod";
import { addToAttempt } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    release: z.infer<typeof schema>;
  }
}

/** Lets the learner see the decision that is sealed, with the bench's findings. */
export const release: Act<"release"> = {
  schema,
  who: ["assessor"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt }) =>
    addToAttempt(core, actor, attempt, ({ decision }, person) => {
      if (!decision) return refuse("decide-first");
      if (decision.sealedWallMs === null) return refuse("seal-first");
      if (decision.releasedWallMs !== null) return refuse("released-already");
      return { type: "released", content: { person, decision: decision.hash } };
    }),
};
