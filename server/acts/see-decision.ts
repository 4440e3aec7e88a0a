import { z } from "zod";
import { authorOf } from "./actor.ts";
import { deskAttempt } from "../desk/on-attempt.ts";
import { releasedDecision } from "../desk/desk-state.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { attemptIdSchema } from "./desk-schemas.ts";

const schema = z.strictObject({ attempt: attemptIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "see-decision": z.infer<typeof schema>;
  }
}

/**
 * The released decision on a learner's own work stands on the screen before them. The first time is put on record; what
 * is somebody else's or was not released is not there for them.
 */
export const seeDecision: Act<"see-decision"> = {
  schema,
  who: ["learner"],
  isFree: true,
  states: always,
  does: ({ core, actor }, { attempt: attemptId }) => {
    const attempt = deskAttempt(core, attemptId);
    if ("ok" in attempt) return attempt;
    const decision = releasedDecision(attempt.state);
    if (attempt.record.learner !== actor.learner || !decision) return refuse("no-such-attempt");
    if (decision.seenWallMs !== null) return done;
    const content = { decision: decision.hash };
    attempt.records.log.append([{ attemptId, type: "decision-seen", author: authorOf(actor), content }]);
    return done;
  },
};
