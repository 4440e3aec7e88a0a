import { z } from "zod";
import { endRun } from "../bench/end-run.ts";
import { done } from "../refusal.ts";
import { type Act, whileOpen } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "leave-attempt": z.infer<typeof schema>;
  }
}

/** Leaves the work as it is; its record stays. */
export const leaveAttempt: Act<"leave-attempt"> = {
  schema,
  who: workers,
  states: [...whileOpen, "interrupted", "handed-in"],
  does: ({ core }) => {
    endRun(core, { reason: "left" });
    return done;
  },
};
