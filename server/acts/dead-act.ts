import type { z } from "zod";
import { deadActSchema } from "../../shared/protocol/make-dead.schema.ts";
import { breakerOfTask } from "../attempt/circuit-chart.ts";
import { deadRefusal } from "../attempt/make-dead.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = deadActSchema;

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "dead-act": z.infer<typeof schema>;
  }
}

/** Something done on the picture on which a circuit is made dead. */
export const deadAct: Act<"dead-act"> = {
  schema,
  who: workers,
  isFree: true,
  states: ["make-dead", "wiring"],
  decides: ({ state, scenario }, act) => {
    if (!state.isExistingCircuit) return refuse("locked");
    const why = deadRefusal(state.deadState, act);
    if (why) return refuse(why);
    return events({ type: "dead-acted", content: { act, breaker: breakerOfTask(scenario) } });
  },
};
