import { z } from "zod";
import { setFrozen } from "../bench/hold-bench.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { authorOf } from "./actor.ts";

const schema = z.strictObject({ isFrozen: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "freeze-bench": z.infer<typeof schema>;
  }
}

/** A trainer has everybody look up: the bench takes nothing from whoever works at it, while it goes on sensing. */
export const freezeBench: Act<"freeze-bench"> = {
  schema,
  who: ["trainer"],
  isFree: true,
  states: always,
  isRemote: true,
  does: ({ core, actor }, { isFrozen }) => {
    setFrozen(core, isFrozen, actor.staff ?? "", authorOf(actor));
    return done;
  },
};
