import { z } from "zod";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ isOpen: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "choose-network": z.infer<typeof schema>;
  }
}

/** A technician lets the network in, or shuts it out, from the next start on. */
export const chooseNetwork: Act<"choose-network"> = {
  schema,
  who: ["technician"],
  isFree: true,
  states: always,
  does: ({ core, actor }, { isOpen }) => {
    const { people, records } = core.parts;
    if (!records || core.health.isLogDamaged) return refuse("log-damaged");
    // Everybody may know the badges of invented people.
    if (isOpen && people.isDemonstration) return refuse("demonstration");
    const content = { isOpen, person: actor.staff ?? "" };
    records.log.append([{ attemptId: null, type: "network-chosen", author: authorOf(actor), content }]);
    core.session.remember({ isNetworkChosen: isOpen });
    return done;
  },
};
