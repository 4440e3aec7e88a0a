import { z } from "zod";
import { done, refuse } from "../refusal.ts";
import { giveVerdict } from "../bench/give-verdict.ts";
import { type Act, onOwnRun } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "ask-verdict": z.infer<typeof schema>;
  }
}

/** Asks whether the work is right: answered at once where the board is at rest, else as soon as it is. */
export const askVerdict: Act<"ask-verdict"> = {
  schema,
  who: workers,
  states: ["wiring"],
  inAssessed: "not-in-assessed",
  does: onOwnRun((core, run) => {
    // What cannot be sensed is not judged, however sound it was when it was last seen.
    if (!core.board.isReady) return refuse("no-board");
    if (core.board.isSettled) giveVerdict(core, run);
    else core.work.ask();
    return done;
  }),
};
