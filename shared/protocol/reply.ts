import type { Fact } from "./bench-view.ts";
import type { RefusalCode } from "./said-keys.ts";

/** An act that is refused: why, for the catalogue of the screen, and what goes in its gaps. It has changed nothing. */
export interface Refusal {
  ok: false;
  code: RefusalCode;
  facts: Record<string, Fact>;
}

/** What comes back for an act: done, or refused. */
export type Reply = { ok: true } | Refusal;
