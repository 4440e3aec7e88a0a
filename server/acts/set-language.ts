import { z } from "zod";
import { languages } from "../../shared/text/languages.ts";
import { done } from "../refusal.ts";
import { type Act, always } from "./act.ts";
import { anybodyAtBench } from "./actor.ts";

const schema = z.strictObject({ language: z.enum(languages) });

declare module "../../shared/protocol/acts.ts" {
  interface Acts {
    "set-language": z.infer<typeof schema>;
  }
}

/** Sets the language of the bench's screen. */
export const setLanguage: Act<"set-language"> = {
  schema,
  who: anybodyAtBench,
  isFree: true,
  states: always,
  whileFrozen: true,
  does: ({ core }, { language }) => {
    core.session.remember({ language });
    return done;
  },
};
