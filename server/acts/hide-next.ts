import { z } from "zod";
import { hiddenFaultSchema } from "../../shared/wiring/hidden-fault.schema.ts";
import { mostFaults, whyNotHiddenNext } from "../attempt/may-hide.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";

const schema = z.strictObject({
  scenario: z.string().min(1).max(64),
  /** All of them; none takes back what was hidden before. */
  faults: z.array(hiddenFaultSchema).max(mostFaults),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "hide-next": z.infer<typeof schema>;
  }
}

/** A trainer hides faults in what is there to find at a task, for the next time that it is started. */
export const hideNext: Act<"hide-next"> = {
  schema,
  who: ["trainer"],
  states: always,
  isRemote: true,
  does: ({ core, actor }, { scenario, faults }) => {
    const kit = core.parts.scenarios.kits.get(scenario);
    if (!kit) return refuse("no-such-scenario");
    const refused = whyNotHiddenNext(kit.scenario, faults);
    if (refused) return refused;
    const others = (core.session.memory.hiddenNext ?? []).filter((one) => one.scenario !== scenario);
    const person = actor.staff ?? "";
    core.session.remember({
      hiddenNext: faults.length === 0 ? others : [...others, { scenario, faults, person }],
    });
    return done;
  },
};
