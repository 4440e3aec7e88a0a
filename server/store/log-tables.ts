import type { Statement } from "better-sqlite3";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { AttemptTable } from "./attempt-table.ts";
import type { Connection } from "./open-database.ts";

/** The kinds of documents that rows are made with. */
export type DocumentKind = "board" | "scenario" | "rule-pack" | "criteria";

/** Writes into the tables of the log, all that a row moves. Nothing else in the program does. */
export class LogTables {
  readonly attempts: AttemptTable;
  readonly #insert: Statement<[LogRow]>;
  readonly #end: Statement<[string, number, Uint8Array]>;
  readonly #document: Statement<[Uint8Array, DocumentKind, Uint8Array]>;

  constructor(database: Connection) {
    this.attempts = new AttemptTable(database);
    this.#insert = database.prepare(`
      INSERT INTO log (bench_id, boot, sequence, attempt_id, type, bytes, previous_hash, hash,
        monotonic_ms, wall_ms, clock_state)
      VALUES (@benchId, @boot, @sequence, @attemptId, @type, @bytes, @previousHash, @hash,
        @monotonicMs, @wallMs, @clockState)`);
    this.#end = database.prepare(`
      INSERT INTO log_end (bench_id, row_count, hash) VALUES (?, ?, ?)
      ON CONFLICT (bench_id) DO UPDATE SET row_count = excluded.row_count, hash = excluded.hash`);
    this.#document = database.prepare(
      "INSERT INTO document (hash, kind, bytes) VALUES (?, ?, ?) ON CONFLICT (hash) DO NOTHING",
    );
  }

  /** Rows of one bench with the mark of where its log ends and the table of attempts. To be called inside a transaction. */
  write(rows: readonly LogRow[], rowCountBefore: number): void {
    const last = rows.at(-1);
    if (!last) return;
    for (const row of rows) this.#insert.run(row);
    this.#end.run(last.benchId, rowCountBefore + rows.length, last.hash);
    this.attempts.take(rows);
  }

  /** A document under the hash of its bytes, once. */
  keepDocument(hash: Uint8Array, kind: DocumentKind, bytes: Uint8Array): void {
    this.#document.run(hash, kind, bytes);
  }
}
