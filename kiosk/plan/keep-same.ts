/**
 * Remembers what was made for an id and gives the same thing again as long as its mark is the same, so that what
 * has not changed is not drawn again. What is not asked for in a turn is forgotten.
 */
export class KeepSame<Made> {
  #kept = new Map<string, { mark: readonly unknown[]; made: Made }>();
  #next = new Map<string, { mark: readonly unknown[]; made: Made }>();

  get(id: string, mark: readonly unknown[], make: () => Made): Made {
    const known = this.#kept.get(id);
    const isSame = known?.mark.length === mark.length && known.mark.every((part, i) => part === mark[i]);
    const entry = known && isSame ? known : { mark, made: make() };
    this.#next.set(id, entry);
    return entry.made;
  }

  endTurn(): void {
    this.#kept = this.#next;
    this.#next = new Map();
  }
}
