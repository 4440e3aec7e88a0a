/** Whom the desk has shown a decision since the bench started: they can no longer give a blind view of it. */
export class ShownDecisions {
  readonly #shown = new Set<string>();
  readonly #allUntilMs = new Map<string, number>();

  add(person: string, attemptId: string): void {
    this.#shown.add(`${person} ${attemptId}`);
  }

  /** They took more decisions with them than are counted one by one: all that were made up to then. */
  addAll(person: string, wallMs: number): void {
    this.#allUntilMs.set(person, wallMs);
  }

  /** Whether somebody was shown a decision, or one that was made at that time may have been among all that they took. */
  has(person: string, attemptId: string, decidedWallMs: number): boolean {
    const untilMs = this.#allUntilMs.get(person);
    return this.#shown.has(`${person} ${attemptId}`) || (untilMs !== undefined && decidedWallMs <= untilMs);
  }
}
