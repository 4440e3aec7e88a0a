import { z } from "zod";
import { addToAttempt } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "seal-decision": z.infer<typeof schema>;
  }
}

/** Seals one's own decision: the bench signs the chain up to it. */
export const sealDecision: Act<"seal-decision"> = {
  schema,
  who: ["assessor"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt }) =>
    addToAttempt(core, actor, attempt, ({ decision }, person) => {
      if (!decision) return refuse("decide-first");
      if (decision.sealedWallMs !== null) return refuse("decision-sealed");
      if (decision.person !== person) return refuse("not-your-decision");
      return { type: "decision-sealed", content: { person, decision: decision.hash } };
    }),
};
