import { z } from "zod";
import { type Act, events, whileOpen } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "take-back": z.infer<typeof schema>;
  }
}

/** No longer ready for check. */
export const takeBack: Act<"take-back"> = {
  schema,
  who: workers,
  isFree: true,
  states: whileOpen,
  decides: ({ state }) =>
    state.status === "ready" ? events({ type: "ready-ended", content: { reason: "taken-back" } }) : events(),
};
