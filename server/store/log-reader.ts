import type { EventType, LogRow } from "../../shared/protocol/log-row.ts";
import { isSigned } from "./is-signed.ts";
import type { Connection } from "./open-database.ts";
import { readEachThrough, readThrough } from "./read-through.ts";
import { rowOfRecord } from "./row-of-record.ts";
import { StoreError } from "./store-error.ts";

const columns = `bench_id, boot, sequence, attempt_id, type, bytes, previous_hash, hash,
  monotonic_ms, wall_ms, clock_state`;

/** A seal stands behind no more rows than are written at once with what it is set on. */
const mostBeforeSeal = 8;

/** A place in the log, by which rows are ordered. */
export type LogCursor = Pick<LogRow, "benchId" | "boot" | "sequence">;

/** Reads the log, always in the order (bench, boot, sequence). */
export class LogReader {
  readonly #database: Connection;

  constructor(database: Connection) {
    this.#database = database;
  }

  /** All rows, one at a time, so that a long log does not have to fit in memory. */
  *rows(): Generator<LogRow> {
    yield* readEachThrough(this.#database, () =>
      rowsOf(
        this.#database.prepare(`SELECT ${columns} FROM log ORDER BY bench_id, boot, sequence`).iterate(),
      ),
    );
  }

  /** The rows of one attempt: those of the bench it was done on, then what was added elsewhere. */
  rowsOfAttempt(attemptId: string): LogRow[] {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE attempt_id = ?
       ORDER BY bench_id IS NOT (SELECT bench_id FROM attempt WHERE attempt_id = ?), bench_id, boot, sequence`,
      attemptId,
      attemptId,
    );
  }

  /** The rows of one attempt, with the bench's seal right behind what it was set on. */
  rowsWithSeals(attemptId: string): LogRow[] {
    const rows = this.rowsOfAttempt(attemptId);
    const seals = rows.filter(({ type }) => isSigned(type)).flatMap((row) => this.#sealOf(row));
    const benches = [...new Set(rows.map(({ benchId }) => benchId))];
    return [...rows, ...seals].sort(
      (a, b) =>
        benches.indexOf(a.benchId) - benches.indexOf(b.benchId) || a.boot - b.boot || a.sequence - b.sequence,
    );
  }

  /** The seal that was written with a row; none where nothing was sealed. */
  #sealOf(row: LogRow): LogRow[] {
    const after = this.rowsAfter(row, mostBeforeSeal);
    const seal = after.find(({ type, attemptId }) => type === "sealed" || attemptId !== row.attemptId);
    return seal?.type === "sealed" && seal.boot === row.boot ? [seal] : [];
  }

  /**
   * The rows after a place in the log, `limit` at most, or the first ones where no place is given: for whoever
   * takes the log elsewhere in batches, the place of the last row being where the next batch begins.
   */
  rowsAfter(cursor: LogCursor | undefined, limit: number): LogRow[] {
    const { benchId, boot, sequence } = cursor ?? { benchId: "", boot: 0, sequence: 0 };
    return this.#rows(
      `SELECT ${columns} FROM log WHERE (bench_id, boot, sequence) > (?, ?, ?)
       ORDER BY bench_id, boot, sequence LIMIT ?`,
      benchId,
      boot,
      sequence,
      limit,
    );
  }

  /** The row at a place in the log; undefined where there is none. */
  rowAt({ benchId, boot, sequence }: LogCursor): LogRow | undefined {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE bench_id = ? AND boot = ? AND sequence = ?`,
      benchId,
      boot,
      sequence,
    )[0];
  }

  /** The last row of a bench; undefined where there is none. */
  lastRow(benchId: string): LogRow | undefined {
    return this.lastRows(benchId, 1)[0];
  }

  /** The last rows of a bench, in their order. */
  lastRows(benchId: string, count: number): LogRow[] {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE bench_id = ? ORDER BY boot DESC, sequence DESC LIMIT ?`,
      benchId,
      count,
    ).reverse();
  }

  /** The rows of a type that belong to no attempt, of a kind that there are few of. */
  rowsApartOfType(type: EventType): LogRow[] {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE type = ? AND attempt_id IS NULL ORDER BY bench_id, boot, sequence`,
      type,
    );
  }

  /** The rows that say to whom of the staff the decision on an attempt was shown. */
  rowsOfShown(attemptId: string): LogRow[] {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE attempt_id = ? AND type = 'decision-shown'
       ORDER BY bench_id, boot, sequence`,
      attemptId,
    );
  }

  /** The last row of a type that belongs to no attempt, in the log of a bench; undefined where there is none. */
  lastOfType(type: EventType, benchId: string): LogRow | undefined {
    return this.#rows(
      `SELECT ${columns} FROM log WHERE type = ? AND bench_id = ? AND attempt_id IS NULL
       ORDER BY boot DESC, sequence DESC LIMIT 1`,
      type,
      benchId,
    )[0];
  }

  eventCount(): number {
    const ends = readThrough(this.#database, () =>
      this.#database
        .prepare<[], { rowCount: number }>("SELECT coalesce(sum(row_count), 0) AS rowCount FROM log_end")
        .get(),
    );
    return ends?.rowCount ?? 0;
  }

  /** The hashes of all documents, in hexadecimal. */
  documentHashes(): string[] {
    return readThrough(this.#database, () =>
      this.#database.prepare<[], string>("SELECT lower(hex(hash)) FROM document ORDER BY hash").pluck().all(),
    );
  }

  /** The bytes of a document by the hexadecimal form of its hash. */
  document(hash: string): Uint8Array | undefined {
    return readThrough(
      this.#database,
      () =>
        this.#database
          .prepare<[Uint8Array], { bytes: Uint8Array }>("SELECT bytes FROM document WHERE hash = ?")
          .get(Buffer.from(hash, "hex"))?.bytes,
    );
  }

  #rows(sql: string, ...values: (string | number)[]): LogRow[] {
    return readThrough(this.#database, () => [...rowsOf(this.#database.prepare(sql).all(...values))]);
  }
}

function* rowsOf(records: Iterable<unknown>): Generator<LogRow> {
  for (const record of records) {
    const row = rowOfRecord(record);
    if (!row) throw new StoreError("damaged", { reason: "a record of the log is not in its form" });
    yield row;
  }
}
