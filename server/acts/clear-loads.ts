import { z } from "zod";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "clear-loads": z.infer<typeof schema>;
  }
}

/** Begins the run anew with everything off and cold. */
export const clearLoads: Act<"clear-loads"> = {
  schema,
  who: workers,
  states: ["wiring"],
  decides: ({ state }) =>
    state.meter.supply === "holds"
      ? events({ type: "load-run-cleared", content: {} })
      : refuse("energise-first"),
};
