import { z } from "zod";
import { endRun } from "../bench/end-run.ts";
import { endHealthTools } from "../bench/board-health.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({ everywhere: z.literal(true).optional() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "sign-out": z.infer<typeof schema>;
  }
}

/**
 * Locks the bench. The work is kept: an open attempt goes on when the same person signs in again. A guest's work
 * ends: nobody can tell whether the next guest is the same.
 */
export const signOut: Act<"sign-out"> = {
  schema,
  who: anybodyAtBench,
  isFree: true,
  states: always,
  whileFrozen: true,
  does: ({ core, actor, run }, { everywhere }) => {
    if (everywhere && actor.staff !== undefined) core.parts.webSessions.endAllOf(actor.staff);
    if (actor.kind === "guest" && run) endRun(core, { reason: "left" });
    core.session.signOut();
    endHealthTools(core);
    core.work.forgetUndos();
    return done;
  },
};
