import { z } from "zod";
import { startSelfCheck } from "../bench/board-health.ts";
import { type Act, always } from "./act.ts";
import { keepers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "self-check-cleared": z.infer<typeof schema>;
  }
}

/** Checks a board that still reads as joined though all leads are out: whoever says so has looked. */
export const selfCheckCleared: Act<"self-check-cleared"> = {
  schema,
  who: keepers,
  states: always,
  does: ({ core }) => startSelfCheck(core, { areLeadsOut: true }),
};
