import { z } from "zod";
import { hiddenFaultSchema } from "../../shared/wiring/hidden-fault.schema.ts";
import { whyNotHidden } from "../attempt/may-hide.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";
import { attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema, fault: hiddenFaultSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "hide-fault": z.infer<typeof schema>;
  }
}

/** A trainer hides a fault in the circuit that is being worked on. The learner is told how many there are, and no more. */
export const hideFault: Act<"hide-fault"> = {
  schema,
  who: ["trainer"],
  states: always,
  isRemote: true,
  does: ({ core, actor }, { attempt, fault }) => {
    const { run, isOpen } = core.work;
    // It is for the work that the trainer looks at, never for the next learner's.
    if (!isOpen || run?.state.id !== attempt) return refuse("no-such-attempt");
    const refused = whyNotHidden(run, fault);
    if (refused) return refused;
    run.record([{ type: "fault-set", content: { fault, person: actor.staff ?? "" } }], authorOf(actor));
    return done;
  },
};
