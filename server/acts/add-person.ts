import { z } from "zod";
import { refusalOfPin } from "../people/people.ts";
import { badgeSchema, personRoles, pinSchema, toldSchema } from "../people/person.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf, keepers } from "./actor.ts";

const schema = z.strictObject({
  name: toldSchema.shape.name,
  role: z.enum(personRoles),
  centreNumber: z.string().trim().max(30).optional(),
  pin: pinSchema.optional(),
  badge: badgeSchema.optional(),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "add-person": z.infer<typeof schema>;
  }
}

/** Puts somebody on the list. A trainer puts learners on it, a technician anybody. */
export const addPerson: Act<"add-person"> = {
  schema,
  who: keepers,
  isFree: true,
  states: always,
  does: async ({ core, actor }, typed) => {
    if (actor.kind !== "technician" && typed.role !== "learner") return refuse("not-for-you");
    // A bench whose people are invented is not mixed with real ones.
    if (core.parts.people.isDemonstration) return refuse("demonstration");
    const added = await core.parts.people.list.add(typed, authorOf(actor)).catch(refusalOfPin);
    return "ok" in added ? added : done;
  },
};
