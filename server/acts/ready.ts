import { z } from "zod";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    ready: z.infer<typeof schema>;
  }
}

/** Ready for check: what is on the board now waits for the trainer. */
export const ready: Act<"ready"> = {
  schema,
  who: workers,
  states: ["wiring"],
  isAtRest: true,
  decides: ({ plugged, judged }) => events({ type: "ready", content: { full: plugged, ...judged() } }),
};
