import { z } from "zod";
import { endReasons } from "../../shared/protocol/attempt-words.ts";
import { endRun } from "../bench/end-run.ts";
import { done, refuse } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ why: z.enum(endReasons) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "end-attempt": z.infer<typeof schema>;
  }
}

/** A trainer ends the work that lies open on the bench, whoever's it is; its record stays and says who and why. */
export const endAttempt: Act<"end-attempt"> = {
  schema,
  who: ["trainer"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { why }) => {
    if (!core.work.isOpen) return refuse("nothing-to-end");
    endRun(core, { reason: "ended", person: actor.staff ?? "", why }, authorOf(actor));
    return done;
  },
};
