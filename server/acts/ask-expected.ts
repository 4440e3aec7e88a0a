import { z } from "zod";
import { liveTests } from "../../shared/electrical/check-live-reading.ts";
import { testKinds } from "../../shared/wiring/wiring.schema.ts";
import { liveSlots } from "../attempt/circuit-under-test.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({ test: z.enum([...testKinds, ...liveTests]), of: z.string().max(60) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "ask-expected": z.infer<typeof schema>;
  }
}

/** Asks what a reading of the record should come to, with its working; practice only. */
export const askExpected: Act<"ask-expected"> = {
  schema,
  who: workers,
  states: ["wiring"],
  inAssessed: "not-in-assessed",
  decides: ({ testTask }, { test, of }) => {
    const slots = [...testTask.slots, ...liveSlots(testTask)];
    if (!slots.some((slot) => slot.test === test && slot.of === of)) return refuse("not-a-question");
    return events({ type: "expected-asked", content: { test, of } });
  },
};
