import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";

/** So many steps can be taken back. */
const mostSteps = 200;

/** A draft that is worked on, with every step of it to be taken back and done again. */
export class DraftHistory {
  #past = $state.raw<readonly Scenario[]>([]);
  #future = $state.raw<readonly Scenario[]>([]);
  now = $state.raw<Scenario>() as Scenario;

  constructor(first: Scenario) {
    this.now = first;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  get canRedo(): boolean {
    return this.#future.length > 0;
  }

  /** A step: what was before can be had back. */
  change(next: Scenario): void {
    if (next === this.now) return;
    this.#past = [...this.#past, this.now].slice(-mostSteps);
    this.#future = [];
    this.now = next;
  }

  /** What the bench wrote into it is no step of its own. */
  complete(next: Scenario): void {
    this.now = next;
  }

  undo(): void {
    const before = this.#past.at(-1);
    if (!before) return;
    this.#future = [this.now, ...this.#future];
    this.#past = this.#past.slice(0, -1);
    this.now = before;
  }

  redo(): void {
    const [next, ...rest] = this.#future;
    if (!next) return;
    this.#past = [...this.#past, this.now];
    this.#future = rest;
    this.now = next;
  }
}
