import type { Speaker } from "../../../kiosk/plan/plan-input.ts";
import { en } from "../../../kiosk/text/en.ts";
import { numberIn } from "../../../kiosk/text/number-in.ts";

const write = (fact: unknown): string => (typeof fact === "number" ? numberIn("en", fact) : String(fact));

/** The English of the screen, for what is drawn without one. */
export const english: Speaker = {
  language: "en",
  t: (key, facts = {}) => en[key].replace(/\{(\w+)\}/g, (_, name: string) => write(facts[name])),
  of: (text) => text.en,
  number: (n) => numberIn("en", n),
};
