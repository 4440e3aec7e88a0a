import { z } from "zod";
import { adjustmentsSchema } from "../people/person.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf, keepers } from "./actor.ts";

const schema = z.strictObject({ person: z.string().min(1).max(64), adjustments: adjustmentsSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "adjust-person": z.infer<typeof schema>;
  }
}

/** Keeps what was agreed with a learner: more time, breaks, large letters, reading aloud. */
export const adjustPerson: Act<"adjust-person"> = {
  schema,
  who: keepers,
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { person, adjustments }) =>
    core.parts.people.list.adjust(person, adjustments, authorOf(actor)) ?? done,
};
