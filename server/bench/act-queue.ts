/** As soon as the program has done what it can do without waiting for anything outside it. */
const soon = (): Promise<void> => new Promise((resolve) => void setImmediate(resolve));

/**
 * The order in which acts are done: that in which they came. Only an act that waits for the board is passed, by those that
 * have nothing to do with the board.
 */
export class ActQueue {
  #last: Promise<unknown> = Promise.resolve();
  #lastFree: Promise<unknown> = Promise.resolve();

  /** Does an act in its turn. `act` never rejects. */
  do<Answer>(isFree: boolean, act: () => Promise<Answer>): Promise<Answer> {
    // What came before it has its chance to be done first, unless it waits for more than the program itself.
    const before = isFree ? Promise.race([this.#last, soon()]) : this.#last;
    const answer = Promise.all([before, this.#lastFree]).then(act);
    if (isFree) this.#lastFree = answer;
    else this.#last = answer;
    return answer;
  }

  /** Waits until all that came so far is done. */
  async end(): Promise<void> {
    await Promise.all([this.#last, this.#lastFree]);
  }
}
