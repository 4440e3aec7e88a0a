import { z } from "zod";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({ isLarge: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "set-large": z.infer<typeof schema>;
  }
}

/** Large text on the bench's screen, on or off. */
export const setLarge: Act<"set-large"> = {
  schema,
  who: anybodyAtBench,
  isFree: true,
  states: always,
  whileFrozen: true,
  does: ({ core }, { isLarge }) => {
    core.session.remember({ isLarge });
    return done;
  },
};
