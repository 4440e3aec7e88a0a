import type { AttemptRecord, BenchWork } from "./attempt-record.ts";
import { recordColumns } from "./attempt-table.ts";
import type { Connection } from "./open-database.ts";
import { readThrough } from "./read-through.ts";

/** Which attempts a list is of; what is left out does not narrow it. */
export interface AttemptFilter {
  /** Null: those of guests. */
  learner?: string | null;
  scenario?: string;
  mode?: string;
  status?: AttemptRecord["status"];
  proposal?: string;
  isDecided?: boolean;
}

/** Where a page of attempts ended; the next one begins after it. */
export type AttemptCursor = Pick<AttemptRecord, "benchId" | "startBoot" | "startSequence">;

const conditions: { [Key in keyof AttemptFilter]-?: (value: AttemptFilter[Key]) => string } = {
  learner: () => "learner IS @learner",
  scenario: () => "scenario = @scenario",
  mode: () => "mode = @mode",
  status: () => "status = @status",
  proposal: () => "proposal = @proposal",
  isDecided: (isDecided) => (isDecided ? "decision IS NOT NULL" : "decision IS NULL"),
};

/** Reads the table of attempts. */
export class AttemptReader {
  readonly #database: Connection;

  constructor(database: Connection) {
    this.#database = database;
  }

  /** The attempt that was started last on a bench, and whether it is still there. */
  workOf(benchId: string): BenchWork | undefined {
    const work = readThrough(this.#database, () =>
      this.#database
        .prepare<[string], { attemptId: string; isOnBench: number }>(
          "SELECT attempt_id AS attemptId, is_on_bench AS isOnBench FROM bench_work WHERE bench_id = ?",
        )
        .get(benchId),
    );
    return work && { ...work, isOnBench: work.isOnBench === 1 };
  }

  byId(attemptId: string): AttemptRecord | undefined {
    return readThrough(this.#database, () =>
      this.#database
        .prepare<[string], AttemptRecord>(`SELECT ${recordColumns} FROM attempt WHERE attempt_id = ?`)
        .get(attemptId),
    );
  }

  /**
   * One page of attempts, the last started first, in an order that stays: one that is worked on meanwhile keeps
   * its place. `next` is where the page after it begins; undefined where there is none.
   */
  page(
    filter: AttemptFilter,
    limit: number,
    after?: AttemptCursor,
  ): { attempts: AttemptRecord[]; next: AttemptCursor | undefined } {
    const keys = (Object.keys(conditions) as (keyof AttemptFilter)[]).filter(
      (key) => filter[key] !== undefined,
    );
    const where = [
      ...keys.map((key) => (conditions[key] as (value: unknown) => string)(filter[key])),
      ...(after ? ["(bench_id, start_boot, start_sequence) < (@benchId, @startBoot, @startSequence)"] : []),
    ];
    const values = Object.fromEntries(
      keys.filter((key) => key !== "isDecided").map((key) => [key, filter[key]]),
    );
    const found = readThrough(this.#database, () =>
      this.#database
        .prepare<[object], AttemptRecord>(
          `SELECT ${recordColumns} FROM attempt ${where.length > 0 ? `WHERE ${where.join(" AND ")}` : ""}
         ORDER BY bench_id DESC, start_boot DESC, start_sequence DESC LIMIT @limit`,
        )
        .all({ ...values, ...after, limit: limit + 1 }),
    );
    const attempts = found.slice(0, limit);
    return { attempts, next: found.length > limit ? attempts.at(-1) : undefined };
  }
}
