import type { Clock, Timers } from "../clock/clock.ts";
import type { OrderBy } from "./order-by.ts";
import { newPairCode } from "./pair-code.ts";

/** A code is for one bench, for so long and so many wrong tries. */
const codeLifeMs = 180_000;
const mostTries = 3;

interface Code {
  text: string;
  by: OrderBy;
  endsMs: number;
  endsWallMs: number;
  triesLeft: number;
  isUsed: boolean;
}

/** The pairing code that a lead shows: one at a time, gone after its time, its tries or its bench. */
export class ShownCode {
  readonly #clock: Clock;
  readonly #timers: Timers;
  readonly #changed: () => void;
  #code: Code | undefined;

  constructor(clock: Clock, timers: Timers, changed: () => void) {
    this.#clock = clock;
    this.#timers = timers;
    this.#changed = changed;
  }

  get shown(): { text: string; by: OrderBy; endsWallMs: number } | undefined {
    return this.#code && this.#clock.monotonicMs() < this.#code.endsMs ? this.#code : undefined;
  }

  /** Shows a new one, on somebody's word; the one before ends. */
  showNew(by: OrderBy): void {
    const code = {
      text: newPairCode(),
      by,
      endsMs: this.#clock.monotonicMs() + codeLifeMs,
      endsWallMs: this.#clock.wallMs() + codeLifeMs,
      triesLeft: mostTries,
      isUsed: false,
    };
    this.#code = code;
    this.#timers.after(codeLifeMs, () => this.#drop(code));
    this.#changed();
  }

  /** Uses one try up, before it is looked at: nobody tries twice at once. Gives what it is tried against. */
  useTry(): Code | undefined {
    const code = this.shown && this.#code;
    if (!code) return undefined;
    code.triesLeft -= 1;
    if (code.triesLeft <= 0) this.#drop(code);
    return code;
  }

  /** A right try uses the code up, the last one too. Nobody else may come by it, and what was done with it shows. */
  useUp(code: Code): void {
    code.isUsed = true;
    if (this.#code === code) this.#code = undefined;
    this.#changed();
  }

  /** Ends it without a word: what shows it ends as well. */
  end(): void {
    this.#code = undefined;
  }

  #drop(code: Code): void {
    if (this.#code !== code) return;
    this.#code = undefined;
    this.#changed();
  }
}
