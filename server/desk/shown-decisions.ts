/** Whom the desk has shown a decision since the bench started: they can no longer give a blind view of it. */
export class ShownDecisions {
  readonly #shown = new Set<string>();

  add(person: string, attemptId: string): void {
    this.#shown.add(`${person} ${attemptId}`);
  }

  has(person: string, attemptId: string): boolean {
    return this.#shown.has(`${person} ${attemptId}`);
  }
}
