import type { Statement } from "better-sqlite3";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import {
  type AttemptRecord,
  attemptTableVersion,
  type BenchWork,
  recordAfter,
  workAfter,
} from "./attempt-record.ts";
import { LogReader } from "./log-reader.ts";
import type { Connection } from "./open-database.ts";

/** Each field of a record with its column. */
const columnOf: Record<keyof AttemptRecord, string> = {
  attemptId: "attempt_id",
  benchId: "bench_id",
  startBoot: "start_boot",
  startSequence: "start_sequence",
  learner: "learner",
  scenario: "scenario",
  mode: "mode",
  kind: "kind",
  status: "status",
  startedWallMs: "started_wall_ms",
  lastWallMs: "last_wall_ms",
  readyWallMs: "ready_wall_ms",
  handedInWallMs: "handed_in_wall_ms",
  eventCount: "event_count",
  tryCount: "try_count",
  hintCount: "hint_count",
  dangerCount: "danger_count",
  fixCount: "fix_count",
  queryCount: "query_count",
  noteCount: "note_count",
  proposal: "proposal",
  decision: "decision",
  decidedBy: "decided_by",
  decidedWallMs: "decided_wall_ms",
  overrideCount: "override_count",
  nextKind: "next_kind",
  declaredWallMs: "declared_wall_ms",
  sealedWallMs: "sealed_wall_ms",
  releasedWallMs: "released_wall_ms",
  review: "review",
  reviewedWallMs: "reviewed_wall_ms",
};
const fields = Object.keys(columnOf) as (keyof AttemptRecord)[];
/** What a start sets once and for all. */
const fixed = new Set<keyof AttemptRecord>(fields.slice(0, fields.indexOf("status")));
const moving = fields.filter((field) => !fixed.has(field) && field !== "startedWallMs");

/** The columns of a record under the names of its fields, for a SELECT. */
export const recordColumns = fields.map((field) => `${columnOf[field]} AS ${field}`).join(", ");

const setTo = (changed: readonly (keyof AttemptRecord)[]): string =>
  changed.map((field) => `${columnOf[field]} = @${field}`).join(", ");

/**
 * Keeps the table of attempts in step with the log: called in the transaction that appends, so that neither is
 * ever ahead of the other.
 */
export class AttemptTable {
  readonly #database: Connection;
  readonly #find: Statement<[string], AttemptRecord>;
  readonly #remove: Statement<[string]>;
  readonly #insert: Statement<[AttemptRecord]>;
  readonly #count: Statement<[AttemptRecord]>;
  readonly #update: Statement<[AttemptRecord]>;
  readonly #findWork: Statement<[string], { attemptId: string; isOnBench: number }>;
  readonly #putWork: Statement<[string, string, number]>;

  constructor(database: Connection) {
    this.#database = database;
    this.#find = database.prepare(`SELECT ${recordColumns} FROM attempt WHERE attempt_id = ?`);
    this.#remove = database.prepare("DELETE FROM attempt WHERE attempt_id = ?");
    this.#insert = database.prepare(
      `INSERT INTO attempt (${fields.map((field) => columnOf[field]).join(", ")})
       VALUES (${fields.map((field) => `@${field}`).join(", ")})`,
    );
    // Most events move no index and only two columns.
    this.#count = database.prepare(
      `UPDATE attempt SET ${setTo(["eventCount", "lastWallMs"])} WHERE attempt_id = @attemptId`,
    );
    this.#update = database.prepare(`UPDATE attempt SET ${setTo(moving)} WHERE attempt_id = @attemptId`);
    this.#findWork = database.prepare(
      "SELECT attempt_id AS attemptId, is_on_bench AS isOnBench FROM bench_work WHERE bench_id = ?",
    );
    this.#putWork = database.prepare(
      `INSERT INTO bench_work (bench_id, attempt_id, is_on_bench) VALUES (?, ?, ?)
       ON CONFLICT (bench_id) DO UPDATE SET attempt_id = excluded.attempt_id, is_on_bench = excluded.is_on_bench`,
    );
  }

  /** Takes in rows of the log, in their order, each once. To be called inside the transaction that writes them. */
  take(rows: readonly LogRow[]): void {
    for (const row of rows) {
      if (row.attemptId === null) continue;
      const before = this.#find.get(row.attemptId);
      const after = recordAfter(before, row);
      if (after) this.#put(before, after);
      const work = this.#workOf(row.benchId);
      const next = workAfter(work, row);
      if (next && next !== work) this.#putWork.run(row.benchId, next.attemptId, next.isOnBench ? 1 : 0);
    }
  }

  /**
   * Makes the whole table anew from the log, in one transaction, and gives how many attempts there are.
   *
   * @throws StoreError `damaged` where a record of the log is not in its form; then the table is as it was.
   */
  rebuild(): number {
    return this.#database.transaction(() => {
      this.#database.exec("DELETE FROM attempt; DELETE FROM bench_work");
      const { attempts, works } = attemptsOf(new LogReader(this.#database).rows());
      for (const record of attempts.values()) this.#insert.run(record);
      for (const [benchId, work] of works) this.#putWork.run(benchId, work.attemptId, work.isOnBench ? 1 : 0);
      this.#database
        .prepare(
          `INSERT INTO projection (name, version) VALUES ('attempt', ?)
           ON CONFLICT (name) DO UPDATE SET version = excluded.version`,
        )
        .run(attemptTableVersion);
      return attempts.size;
    })();
  }

  /** Makes the table anew where another version of the program made it, or none. */
  bringUpToDate(): void {
    const made = this.#database
      .prepare<[], { version: number }>("SELECT version FROM projection WHERE name = 'attempt'")
      .get();
    if (made?.version !== attemptTableVersion) this.rebuild();
  }

  #put(before: AttemptRecord | undefined, after: AttemptRecord): void {
    const isSameStart = before?.startBoot === after.startBoot && before.startSequence === after.startSequence;
    if (!before || !isSameStart) {
      this.#remove.run(after.attemptId);
      this.#insert.run(after);
    } else if (moving.every((field) => isCounted(field) || before[field] === after[field]))
      this.#count.run(after);
    else this.#update.run(after);
  }

  #workOf(benchId: string): BenchWork | undefined {
    const work = this.#findWork.get(benchId);
    return work && { ...work, isOnBench: work.isOnBench === 1 };
  }
}

const isCounted = (field: keyof AttemptRecord): boolean => field === "eventCount" || field === "lastWallMs";

/** The attempts that a whole log tells, and what stands on each bench at its end. */
export function attemptsOf(rows: Iterable<LogRow>): {
  attempts: Map<string, AttemptRecord>;
  works: Map<string, BenchWork>;
} {
  const attempts = new Map<string, AttemptRecord>();
  const works = new Map<string, BenchWork>();
  const early: LogRow[] = [];
  const take = (row: LogRow, attemptId: string): boolean => {
    const record = recordAfter(attempts.get(attemptId), row);
    if (record) attempts.set(attemptId, record);
    return record !== undefined;
  };
  for (const row of rows) {
    if (row.attemptId === null) continue;
    // What was added to it at another bench may stand before it, where that one's id comes first.
    if (!take(row, row.attemptId)) early.push(row);
    const work = workAfter(works.get(row.benchId), row);
    if (work) works.set(row.benchId, work);
  }
  for (const row of early) {
    const isAddedElsewhere = attempts.get(row.attemptId ?? "")?.benchId !== row.benchId;
    if (row.attemptId !== null && isAddedElsewhere) take(row, row.attemptId);
  }
  return { attempts, works };
}
