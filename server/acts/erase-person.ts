import { z } from "zod";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ person: z.string().min(1).max(64) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "erase-person": z.infer<typeof schema>;
  }
}

/** Takes somebody's name, centre number, badge and PIN away for good. The log keeps its records of nobody. */
export const erasePerson: Act<"erase-person"> = {
  schema,
  who: ["technician"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { person }) => {
    const isOpen = core.work.isOpen && core.work.state?.learner === person;
    if (isOpen || actor.staff === person) return refuse("person-at-work");
    const refused = core.parts.people.list.erase(person, authorOf(actor));
    if (!refused) core.parts.webSessions.endAllOf(person);
    return refused ?? done;
  },
};
