import type { Fact } from "../shared/protocol/bench-view.ts";
import type { Refusal } from "../shared/protocol/reply.ts";
import type { RefusalCode } from "../shared/protocol/said-keys.ts";

/** A refusal with its code and what goes in the gaps of its sentence. */
export const refuse = (code: RefusalCode, facts: Record<string, Fact> = {}): Refusal => ({
  ok: false,
  code,
  facts,
});

export const done = { ok: true } as const;
