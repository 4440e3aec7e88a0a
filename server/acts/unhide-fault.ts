import { z } from "zod";
import { faultNameSchema } from "../../shared/protocol/fault-name.schema.ts";
import { whyNotUnhidden } from "../attempt/may-hide.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";
import { attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema, name: faultNameSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "unhide-fault": z.infer<typeof schema>;
  }
}

/** A trainer takes back a fault that a trainer hid; what the task itself hides stays. */
export const unhideFault: Act<"unhide-fault"> = {
  schema,
  who: ["trainer"],
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt, name }) => {
    const { run, isOpen } = core.work;
    if (!isOpen || run?.state.id !== attempt) return refuse("no-such-attempt");
    const refused = whyNotUnhidden(run.state, name);
    if (refused) return refused;
    run.record([{ type: "fault-unset", content: { name, person: actor.staff ?? "" } }], authorOf(actor));
    return done;
  },
};
