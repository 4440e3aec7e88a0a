import { z } from "zod";
import { stationIdSchema } from "../../shared/board/ids.schema.ts";
import { testKinds } from "../../shared/wiring/wiring.schema.ts";
import { refuse } from "../refusal.ts";
import { type Act, whileOpen } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({
  test: z.enum(testKinds),
  way: stationIdSchema,
  judged: z.enum(["pass", "fail"]),
});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "record-reading": z.infer<typeof schema>;
  }
}

/** Puts what the meter shows on record. */
export const recordReading: Act<"record-reading"> = {
  schema,
  who: workers,
  states: whileOpen,
  // A reading is what the simulated meter shows; there is none to record before the meter is asked.
  decides: () => refuse("no-reading"),
};
