import { z } from "zod";
import { type Act, events, whileOpen } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "accept-caution": z.infer<typeof schema>;
  }
}

/** The caution has been read. */
export const acceptCaution: Act<"accept-caution"> = {
  schema,
  who: workers,
  isFree: true,
  states: whileOpen,
  decides: ({ state }) =>
    state.step === "caution" ? events({ type: "caution-accepted", content: {} }) : events(),
};
