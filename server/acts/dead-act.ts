import type { z } from "zod";
import { deadActSchema } from "../../shared/protocol/make-dead.schema.ts";
import { breakerOfTask } from "../attempt/circuit-chart.ts";
import { deadRefusal, withWay } from "../attempt/make-dead.ts";
import { hasMakeDead } from "../attempt/steps.ts";
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
    if (!hasMakeDead(state)) return refuse("locked");
    const breaker = breakerOfTask(scenario);
    const { deadState, hasBeenLive, meter } = state;
    const picture = hasBeenLive ? withWay(deadState, breaker, meter.supply !== "holds") : deadState;
    const why = deadRefusal(picture, act);
    if (why) return refuse(why);
    // The way is switched on where its tests are held against it.
    const isOn = act.what === "breaker" && act.breaker === breaker && picture.off.includes(breaker);
    if (hasBeenLive && isOn) return refuse("energise-at-test");
    return events({ type: "dead-acted", content: { act, breaker } });
  },
};
