import { z } from "zod";
import { planQuestions } from "../../shared/protocol/attempt-words.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ question: z.enum(planQuestions), answer: z.number().positive() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "answer-plan": z.infer<typeof schema>;
  }
}

/** Answers a question of the design worksheet. */
export const answerPlan: Act<"answer-plan"> = {
  schema,
  who: workers,
  isFree: true,
  states: ["make-dead", "wiring"],
  decides: (situation, content) =>
    situation.planQuestions.includes(content.question)
      ? events({ type: "plan-answered", content })
      : refuse("not-a-question"),
};
