import { z } from "zod";
import { startSelfCheck } from "../bench/board-health.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "self-check": z.infer<typeof schema>;
  }
}

/** Checks an empty board line by line. */
export const selfCheck: Act<"self-check"> = {
  schema,
  who: anybodyAtBench,
  states: always,
  does: ({ core }) => startSelfCheck(core, { areLeadsOut: false }),
};
