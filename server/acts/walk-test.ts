import { z } from "zod";
import { walkTest as walkAlong } from "../bench/board-health.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({ isOn: z.boolean() });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "walk-test": z.infer<typeof schema>;
  }
}

/** A walk along the board with a probe, on or off. */
export const walkTest: Act<"walk-test"> = {
  schema,
  who: anybodyAtBench,
  states: always,
  inAssessed: "not-in-assessed",
  does: ({ core }, message) => walkAlong(core, message),
};
