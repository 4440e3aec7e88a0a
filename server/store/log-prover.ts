import type { Connection } from "./open-database.ts";
import { proveLog, type LogProof } from "./verify-log.ts";

const sliceRowCount = 200;

/**
 * Checks the log while the bench works: a slice of some hundred records at a time, a millisecond or two each,
 * and the rest of the program between them.
 */
export class LogProver {
  readonly #proof: Generator<number, LogProof>;
  readonly #note: (sentence: string) => void;
  #next: NodeJS.Immediate | undefined;
  state: { state: "checking" | "sound" | "damaged"; firstBadRecord?: string } = { state: "checking" };

  constructor(database: Connection, note: (sentence: string) => void) {
    this.#proof = proveLog(database, sliceRowCount);
    this.#note = note;
  }

  start(damaged: () => void): void {
    this.#next = setImmediate(() => this.#slice(damaged));
  }

  stop(): void {
    if (this.#next) clearImmediate(this.#next);
    this.#next = undefined;
  }

  #slice(damaged: () => void): void {
    const step = this.#proof.next();
    if (!step.done) return this.start(damaged);
    const found = step.value;
    if (found.isSound) {
      this.state = { state: "sound" };
      return;
    }
    this.state = { state: "damaged", firstBadRecord: found.firstBadRecord };
    this.#note(`log: first bad record: ${found.firstBadRecord}: ${found.reason}`);
    damaged();
  }
}
