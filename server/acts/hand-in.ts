import { z } from "zod";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "hand-in": z.infer<typeof schema>;
  }
}

/** Hands the work in; it can no longer be changed. */
export const handIn: Act<"hand-in"> = {
  schema,
  who: workers,
  states: ["wiring", "ready"],
  isAtRest: true,
  decides: ({ state, plugged, judged }) =>
    events({
      type: "handed-in",
      content: { full: plugged, ...judged(), tryCount: state.tryCount },
    }),
};
