import type { Banner, Fact } from "../../shared/protocol/bench-view.ts";
import { isTextKey } from "../text/is-text-key.ts";
import { type Words } from "../text/words.svelte.ts";

/** One pair of the scanner's list of swapped pins, such as "load on latch": a signal and whose pin it was found on. */
const swap = /(\w+) on (\w+)/g;

/** A signal as the bench's language has it, with the name that stands in the pin table where that is another. */
const signalName = (signal: string, words: Words): string => {
  const key = `health.signal.${signal}`;
  return isTextKey(key) ? words.t(key) : signal;
};

/** What goes in the gaps of a board fault's sentence, in the language of the bench. */
export function faultFacts(facts: Banner["facts"] | undefined, words: Words): Record<string, Fact> {
  const swaps = facts?.["swaps"];
  if (typeof swaps !== "string") return facts ?? {};
  const told = [...swaps.matchAll(swap)].map(([, signal = "", pin = ""]) =>
    words.t("health.swap", { signal: signalName(signal, words), pin: signalName(pin, words) }),
  );
  return { ...facts, swaps: told.join(", ") };
}
