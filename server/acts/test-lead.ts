import { z } from "zod";
import { entryIdSchema } from "../../shared/board/ids.schema.ts";
import { testLead as showLead } from "../bench/board-health.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({ entryA: entryIdSchema, entryB: entryIdSchema });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "test-lead": z.infer<typeof schema>;
  }
}

/** Shows what a lead between two entries joins. Never while assessed work is open: it would tell of the wiring. */
export const testLead: Act<"test-lead"> = {
  schema,
  who: anybodyAtBench,
  states: always,
  inAssessed: "not-in-assessed",
  does: ({ core }, message) => showLead(core, message),
};
