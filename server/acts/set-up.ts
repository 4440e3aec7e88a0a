import { z } from "zod";
import { ownScreen, refusalOfPin } from "../people/people.ts";
import { pinSchema, toldSchema } from "../people/person.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";

const schema = z.strictObject({
  code: z.string().min(1).max(20),
  name: toldSchema.shape.name,
  pin: pinSchema,
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "set-up": z.infer<typeof schema>;
  }
}

/** The first person of a bench, a technician, with the code that its screen and its terminal show until then. */
export const setUp: Act<"set-up"> = {
  schema,
  who: ["nobody", "guest", "learner"],
  isFree: true,
  states: always,
  inAssessed: "not-in-assessed",
  does: async ({ core }, { code, name, pin }) => {
    const added = await core.parts.people.setUp(code, name, pin, ownScreen).catch(refusalOfPin);
    if ("ok" in added) return added;
    // Invented people are gone from now on, also the one who may stand there.
    core.session.signOut();
    return done;
  },
};
