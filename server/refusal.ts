import type { Fact } from "../shared/protocol/bench-view.ts";
import type { RefusalCode } from "../shared/protocol/said-keys.ts";

/** A command that is refused: why, for the catalogue of the screen. It has changed nothing. */
export interface Refusal {
  ok: false;
  code: RefusalCode;
  facts: Record<string, Fact>;
}

/** A refusal with its code and what goes in the gaps of its sentence. */
export const refuse = (code: RefusalCode, facts: Record<string, Fact> = {}): Refusal => ({
  ok: false,
  code,
  facts,
});

export const done = { ok: true } as const;
