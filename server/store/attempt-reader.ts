import { type AttemptCursor, type OrderColumn, startOrder } from "./attempt-order.ts";
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
  /** What was decided. */
  decision?: string;
  decidedBy?: string;
  isReleased?: boolean;
  /** Any of these learners. */
  learners?: readonly string[];
  /** What one of the columns says; null where it says nothing. */
  says?: { column: OrderColumn; value: string | null };
  /** Started at this time or later, and before that one. */
  fromWallMs?: number;
  beforeWallMs?: number;
}

const conditions: { [Key in keyof AttemptFilter]-?: (value: AttemptFilter[Key]) => string } = {
  learner: () => "learner IS @learner",
  scenario: () => "scenario = @scenario",
  mode: () => "mode = @mode",
  status: () => "status = @status",
  proposal: () => "proposal = @proposal",
  isDecided: (isDecided) => (isDecided ? "decision IS NOT NULL" : "decision IS NULL"),
  decision: () => "decision = @decision",
  decidedBy: () => "decided_by = @decidedBy",
  isReleased: (isReleased) => (isReleased ? "released_wall_ms IS NOT NULL" : "released_wall_ms IS NULL"),
  learners: () => "learner IN (SELECT value FROM json_each(@learners))",
  says: (says) => `${says?.column ?? ""} IS @said`,
  fromWallMs: () => "started_wall_ms >= @fromWallMs",
  beforeWallMs: () => "started_wall_ms < @beforeWallMs",
};

/** What stands in a query as a value of its own. */
function bound(filter: AttemptFilter): object {
  const { isDecided: _isDecided, isReleased: _isReleased, learners, says, ...rest } = filter;
  return {
    ...rest,
    ...(learners ? { learners: JSON.stringify(learners) } : {}),
    ...(says ? { said: says.value } : {}),
  };
}

const { order: lastFirst } = startOrder(false);

/** Few attempts are of one learner or wait: these have an index. All others are looked for in the order of the list. */
const placeOf = ({ learner, learners, says, status }: AttemptFilter): string =>
  learner !== undefined || learners || says?.column === "learner" || status === "open" || status === "ready"
    ? ""
    : "INDEXED BY attempt_listed";

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

  /**
   * The tasks at which assessed work of a learner is handed in and its first decision not released yet: what they do
   * there in practice would tell them what is right.
   */
  practiceHeld(learner: string): string[] {
    return readThrough(this.#database, () =>
      this.#database
        .prepare<[string], { scenario: string }>(
          `SELECT DISTINCT scenario FROM attempt
           WHERE learner = ? AND mode = 'assessed' AND status = 'handed-in' AND NOT EXISTS
             (SELECT 1 FROM log WHERE log.attempt_id = attempt.attempt_id AND log.type = 'released')
           ORDER BY scenario`,
        )
        .all(learner)
        .map(({ scenario }) => scenario),
    );
  }

  /**
   * What the next assessed go of a learner at a task is, by the decision on what they handed in there last; undefined where
   * none was released or it says nothing. One that is broken off does not use it up.
   */
  nextKindOf(learner: string, scenario: string): string | undefined {
    const kind = readThrough(this.#database, () =>
      this.#database
        .prepare<[string, string], string | null>(
          `SELECT iif(released_wall_ms IS NULL, NULL, next_kind) FROM attempt
           WHERE learner = ? AND scenario = ? AND mode = 'assessed' AND status = 'handed-in' ${lastFirst} LIMIT 1`,
        )
        .pluck()
        .get(learner, scenario),
    );
    return kind ?? undefined;
  }

  byId(attemptId: string): AttemptRecord | undefined {
    return readThrough(this.#database, () =>
      this.#database
        .prepare<[string], AttemptRecord>(`SELECT ${recordColumns} FROM attempt WHERE attempt_id = ?`)
        .get(attemptId),
    );
  }

  /**
   * The scenarios a learner has met: handed in, and found met by whoever decides, or in practice by the bench as long as
   * nobody has decided. What the bench proposes of assessed work is not for the learner, nor a decision before its release.
   */
  scenariosMetBy(learner: string): string[] {
    return readThrough(this.#database, () =>
      this.#database
        .prepare<[string], string>(
          `SELECT DISTINCT scenario FROM attempt WHERE learner = ? AND status = 'handed-in'
             AND (decision = 'met' AND released_wall_ms IS NOT NULL
               OR decision IS NULL AND mode = 'practice' AND proposal = 'met')
           ORDER BY scenario`,
        )
        .pluck()
        .all(learner),
    );
  }

  /** How many attempts a list has. */
  count(filter: AttemptFilter): number {
    const where = this.#where(filter);
    return readThrough(
      this.#database,
      () =>
        this.#database
          .prepare<[object], number>(
            `SELECT count(*) FROM attempt ${where.length > 0 ? `WHERE ${where.join(" AND ")}` : ""}`,
          )
          .pluck()
          .get(bound(filter)) ?? 0,
    );
  }

  #where(filter: AttemptFilter): string[] {
    const keys = Object.keys(conditions) as (keyof AttemptFilter)[];
    return keys.flatMap((key) =>
      filter[key] === undefined ? [] : [(conditions[key] as (value: unknown) => string)(filter[key])],
    );
  }

  /** What a column says in the attempts of a list, each once; null where it says nothing. */
  valuesOf(column: OrderColumn, filter: AttemptFilter): (string | null)[] {
    const where = this.#where(filter);
    // Learners stand in order in an index of their own; what narrows a list stands in another.
    const from =
      column === "learner" && where.length === 0 ? "INDEXED BY attempt_of_learner" : placeOf(filter);
    return readThrough(this.#database, () =>
      this.#database
        .prepare<[object], string | null>(
          `SELECT DISTINCT ${column} FROM attempt ${from} ${where.length > 0 ? `WHERE ${where.join(" AND ")}` : ""}`,
        )
        .pluck()
        .all(bound(filter)),
    );
  }

  /**
   * One page of attempts, the last started first or the first one, in an order that stays: one that is worked on meanwhile
   * keeps its place. `next` is where the page after it begins; undefined where there is none.
   */
  page(
    filter: AttemptFilter,
    limit: number,
    after?: AttemptCursor,
    isFirstFirst = false,
  ): { attempts: AttemptRecord[]; next: AttemptRecord | undefined } {
    const { follows, order } = startOrder(isFirstFirst);
    const where = [...this.#where(filter), ...(after ? [follows] : [])];
    const place = after && {
      benchId: after.benchId,
      startBoot: after.startBoot,
      startSequence: after.startSequence,
    };
    const found = readThrough(this.#database, () =>
      this.#database
        .prepare<[object], AttemptRecord>(
          `SELECT ${recordColumns} FROM attempt WHERE (bench_id, start_boot, start_sequence) IN
             (SELECT bench_id, start_boot, start_sequence FROM attempt ${placeOf(filter)}
              ${where.length > 0 ? `WHERE ${where.join(" AND ")}` : ""} ${order} LIMIT @limit)
           ${order}`,
        )
        .all({ ...bound(filter), ...place, limit: limit + 1 }),
    );
    const attempts = found.slice(0, limit);
    return { attempts, next: found.length > limit ? attempts.at(-1) : undefined };
  }
}
