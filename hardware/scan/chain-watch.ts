import type { BoardFault } from "../../shared/board/sensed-state.schema.ts";
import type { ChainCheck } from "../health/chain-check.ts";
import { chainFaults } from "../lines/chain-faults.ts";

/** How often a word is sent round a sound chain. */
const workMs = 10_000;
/** So many words must be lost in a row. */
const wordsToBelieve = 3;
/** How long before a chain that cannot be read is checked again. */
const retryMs = 3_000;

/** Sends a word round the loop of a chain now and then, and keeps what that said. A board without chips has none. */
export class ChainWatch {
  readonly #check: (() => ChainCheck) | undefined;
  #kind: ChainCheck["kind"] | undefined;
  #checkedMs = Number.NEGATIVE_INFINITY;
  /** Why nothing can be read; empty while all is well. */
  faults: readonly BoardFault[] = [];

  constructor(check: (() => ChainCheck) | undefined) {
    this.#check = check;
  }

  /** Inputs answer, and the word does not come back: no tie, or a cut chain of outputs. */
  get isWordLost(): boolean {
    return this.#kind === "no-loop";
  }

  get isBroken(): boolean {
    return this.faults.length > 0;
  }

  /** A word is asked for in work only where it ever came back. */
  isDueInWork(nowMs: number): boolean {
    return this.#kind === "sound" && nowMs - this.#checkedMs >= workMs;
  }

  isDueAgain(nowMs: number): boolean {
    return nowMs - this.#checkedMs >= retryMs;
  }

  /**
   * Checks it now; nothing may be pulled.
   *
   * @throws LinesError `pin-failed`
   */
  check(nowMs: number): void {
    if (this.#check === undefined) return;
    this.#checkedMs = nowMs;
    let found = this.#check();
    // One clock that slipped is no cut chain.
    for (let again = 1; found.kind !== "sound" && again < wordsToBelieve; again += 1) found = this.#check();
    this.#kind = found.kind;
    this.faults = chainFaults(found);
  }
}
