import { z } from "zod";
import { huntResult } from "../attempt/hunt-result.ts";
import type { HuntState } from "../attempt/hunt-state.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "hand-in": z.infer<typeof schema>;
  }
}

const scoreOf = (hunt: HuntState) => {
  const { points, mostPoints } = huntResult(hunt);
  return { points, mostPoints };
};

/** Hands the work in; it can no longer be changed. */
export const handIn: Act<"hand-in"> = {
  schema,
  who: workers,
  states: ["wiring", "ready"],
  isAtRest: true,
  decides: ({ state, plugged, judgedAtHandIn }) =>
    events({
      type: "handed-in",
      content: {
        full: plugged,
        ...judgedAtHandIn(),
        tryCount: state.tryCount,
        ...(state.hunt ? { hunt: scoreOf(state.hunt) } : {}),
      },
    }),
};
