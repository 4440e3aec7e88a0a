import { z } from "zod";
import { hintLimit } from "../../shared/scenario/hint-limit.ts";
import { refuse } from "../refusal.ts";
import { type Act, events } from "./act.ts";
import { workers } from "./actor.ts";

const schema = z.strictObject({});

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "ask-hint": z.infer<typeof schema>;
  }
}

/** Asks for the next hint. */
export const askHint: Act<"ask-hint"> = {
  schema,
  who: workers,
  states: ["wiring"],
  inAssessed: "no-hints-assessed",
  decides: ({ state, hint }) => {
    const number = state.hints.length + 1;
    if (number > hintLimit) return refuse("no-hints");
    return events({ type: "hint-given", content: { number, text: hint(number) } });
  },
};
