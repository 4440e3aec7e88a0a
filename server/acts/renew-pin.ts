import { z } from "zod";
import { refusalOfPin } from "../people/people.ts";
import { pinSchema } from "../people/person.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ person: z.string().min(1).max(64), pin: pinSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "renew-pin": z.infer<typeof schema>;
  }
}

/** One of the staff has forgotten their PIN: a technician gives them another. Wherever they are signed in, they are not any more. */
export const renewPin: Act<"renew-pin"> = {
  schema,
  who: ["technician"],
  isFree: true,
  states: always,
  does: async ({ core, actor }, { person, pin }) => {
    const { people, webSessions } = core.parts;
    const refused = await people.list.renewPin(person, pin, authorOf(actor)).catch(refusalOfPin);
    if (!refused) webSessions.endAllOf(person);
    return refused ?? done;
  },
};
