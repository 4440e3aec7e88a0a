import { z } from "zod";
import { addToAttempt } from "../desk/on-attempt.ts";
import { refuse } from "../refusal.ts";
import { type Act, onOwnRun } from "./act.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "declare-own-work": z.infer<typeof schema>;
  }
}

/** A learner says that the assessed work they handed in is their own. */
export const declareOwnWork: Act<"declare-own-work"> = {
  schema,
  who: ["learner"],
  isFree: true,
  states: ["handed-in"],
  elsewhere: "not-handed-in",
  does: (doing) =>
    onOwnRun((core, run) => {
      if (run.state.mode !== "assessed") return refuse("not-assessed");
      return addToAttempt(core, doing.actor, run.state.id, ({ state }) =>
        state.declaredWallMs === null
          ? { type: "own-work-declared", content: {} }
          : refuse("declared-already"),
      );
    })(doing, {}),
};
