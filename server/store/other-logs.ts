import type { LogRow } from "../../shared/protocol/log-row.ts";
import { faultAfter, nameOfRow, type PlaceWithHash } from "./chain-proof.ts";
import { type DocumentKind, LogTables } from "./log-tables.ts";
import { documentsNamedIn } from "./named-documents.ts";
import type { Connection } from "./open-database.ts";
import { hashOfBytes, hexOf } from "./row-hash.ts";
import { toStoreError } from "./store-error.ts";

/** How far the log of another bench is here. */
export interface OtherEnd {
  boot: number;
  sequence: number;
  hash: Uint8Array;
  rowCount: number;
}

/** A row does not follow what is here of its bench, or is not as it was written: nothing of what came with it was taken. */
export class OtherLogError extends Error {
  readonly code = "other-log";
}

/** The kinds of documents by what a row calls them. */
const kindOf: Record<string, DocumentKind> = {
  board: "board",
  scenario: "scenario",
  rulePack: "rule-pack",
  criteria: "criteria",
};

/**
 * Takes the logs of other benches into the records, row by row as they were written there, beside the own one, which
 * `LogWriter` alone writes.
 */
export class OtherLogs {
  readonly #database: Connection;
  readonly #path: string;
  readonly #tables: LogTables;
  readonly #ownBenchId: string;

  constructor(database: Connection, path: string, ownBenchId: string) {
    this.#database = database;
    this.#path = path;
    this.#ownBenchId = ownBenchId;
    this.#tables = new LogTables(database);
  }

  /** Where the log of a bench ends here; undefined where nothing of it is. @throws StoreError */
  endOf(benchId: string): OtherEnd | undefined {
    return this.#guarded(() =>
      this.#database
        .prepare<[string], OtherEnd>(
          `SELECT boot, sequence, log.hash AS hash, row_count AS rowCount FROM log JOIN log_end USING (bench_id)
           WHERE bench_id = ? ORDER BY boot DESC, sequence DESC LIMIT 1`,
        )
        .get(benchId),
    );
  }

  /** Hashes, in hexadecimal, of the documents that rows name and that are not here. @throws StoreError */
  missing(rows: readonly LogRow[]): string[] {
    const find = this.#database.prepare<[Uint8Array]>("SELECT 1 FROM document WHERE hash = ?");
    const named = new Set(rows.flatMap((row) => documentsNamedIn(row).map(({ hash }) => hash)));
    return this.#guarded(() => [...named].filter((hash) => find.get(Buffer.from(hash, "hex")) === undefined));
  }

  /**
   * Takes rows of one bench that follow what is here of it, with the documents they name and the list of attempts; all of
   * it or nothing.
   *
   * @throws OtherLogError naming the first row that is not as it should be; StoreError where the disk takes nothing.
   */
  take(rows: readonly LogRow[], documents: ReadonlyMap<string, Uint8Array>): void {
    const [first] = rows;
    if (!first) return;
    const end = this.endOf(first.benchId);
    this.#prove(rows, end, documents);
    const kinds = new Map(
      rows.flatMap((row) =>
        documentsNamedIn(row).map(({ what, hash }) => [hash, kindOf[what] ?? "board"] as const),
      ),
    );
    this.#guarded(() =>
      this.#database.transaction(() => {
        for (const [hash, bytes] of documents)
          this.#tables.keepDocument(Buffer.from(hash, "hex"), kinds.get(hash) ?? "board", bytes);
        this.#tables.write(rows, end?.rowCount ?? 0);
      })(),
    );
  }

  #prove(
    rows: readonly LogRow[],
    end: OtherEnd | undefined,
    documents: ReadonlyMap<string, Uint8Array>,
  ): void {
    const missing = new Set(this.missing(rows));
    const hasDocument = (hash: string): boolean => {
      const bytes = documents.get(hash);
      return !missing.has(hash) || (bytes !== undefined && hexOf(hashOfBytes(bytes)) === hash);
    };
    let before: PlaceWithHash | undefined = end;
    for (const row of rows) {
      const isOther = row.benchId === rows[0]?.benchId && row.benchId !== this.#ownBenchId;
      const fault = isOther ? faultAfter(before, row, hasDocument) : "it is of another bench";
      if (fault) throw new OtherLogError(`${nameOfRow(row.benchId, row.boot, row.sequence)}: ${fault}`);
      before = row;
    }
  }

  #guarded<Found>(act: () => Found): Found {
    try {
      return act();
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
  }
}
