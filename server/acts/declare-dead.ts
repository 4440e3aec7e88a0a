import { z } from "zod";
import { hasMakeDead } from "../attempt/steps.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "declare-dead": z.infer<typeof schema>;
  }
}

/** The circuit is isolated and proved dead, as the learner says; assessed work. */
export const declareDead: Act<"declare-dead"> = {
  schema,
  who: workers,
  isFree: true,
  states: ["make-dead", "wiring"],
  decides: ({ state }) => {
    if (!hasMakeDead(state)) return refuse("locked");
    // Where the bench keeps the list, the list says when it is dead.
    if (state.mode !== "assessed") return refuse("make-dead-first");
    if (state.meter.supply === "holds") return refuse("switch-off-first");
    return events(
      { type: "dead-declared", content: {} },
      { type: "step-entered", content: { step: state.hasBeenLive ? "test" : "plan" } },
    );
  },
};
