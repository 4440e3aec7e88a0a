import type { Pool } from "pg";
import { ChainProof, nameOfRow } from "../store/chain-proof.ts";
import { hashOfBytes, hexOf, isSameBytes, noHash } from "../store/row-hash.ts";
import { rowOfRecord } from "../store/row-of-record.ts";
import { recordOfCentre } from "./centre-rows.ts";
import type { Place } from "./centre-messages.schema.ts";

/** What a check of the centre's store came to. `firstBadRecord` names the first record that is not as a bench wrote it. */
export type CentreProof =
  | { isSound: true; benchCount: number; rowCount: number; documentCount: number; setAsideCount: number }
  | { isSound: false; firstBadRecord: string; reason: string };

const sliceRowCount = 2000;

/** The rows of one bench in their order, as records of the database, some at a time. */
async function* recordsOf(pool: Pool, benchId: string): AsyncGenerator<Record<string, unknown>> {
  let from: Place = { boot: 0, sequence: 0 };
  for (;;) {
    const { rows } = await pool.query<Record<string, unknown>>(
      `SELECT * FROM log_row WHERE bench_id = $1 AND (boot, sequence) > ($2, $3)
       ORDER BY boot, sequence LIMIT $4`,
      [benchId, from.boot, from.sequence, sliceRowCount],
    );
    yield* rows;
    const last = rows.at(-1);
    if (!last || rows.length < sliceRowCount) return;
    from = { boot: Number(last["boot"]), sequence: Number(last["sequence"]) };
  }
}

interface BenchEnd {
  bench_id: string;
  row_count: string;
  head_hash: Buffer | null;
}

/** Proves the rows of one bench, each against the one before; what is wrong with the first bad one. */
async function faultOf(
  pool: Pool,
  { bench_id: benchId, row_count: rowCount, head_hash: headHash }: BenchEnd,
  documents: ReadonlySet<string>,
): Promise<{ firstBadRecord: string; reason: string } | undefined> {
  const chain = new ChainProof((hash) => documents.has(hash));
  for await (const record of recordsOf(pool, benchId)) {
    const row = rowOfRecord(recordOfCentre(record));
    const fault = row ? chain.fault(row) : "it is not in the form of a record";
    if (fault === undefined) continue;
    return { firstBadRecord: nameOfRow(benchId, record["boot"], record["sequence"]), reason: fault };
  }
  const { end } = chain;
  const count = end?.rowCount ?? 0;
  if (count === Number(rowCount) && isSameBytes(end?.hash ?? noHash, headHash ?? noHash)) return undefined;
  return {
    firstBadRecord: end ? nameOfRow(benchId, end.boot, end.sequence + 1) : nameOfRow(benchId, 1, 0),
    reason: `${rowCount} records were taken, ${count} are there`,
  };
}

/**
 * Checks the logs of all benches in the centre's store, and every document against its hash. It proves what `verify` proves
 * of one bench's log; that nobody sent the centre another log from the start, only the benches' anchors can tell.
 */
export async function verifyCentre(pool: Pool): Promise<CentreProof> {
  const documents = new Set<string>();
  // By hash, one at a time: a store of years has some hundred.
  const { rows: hashes } = await pool.query<{ hash: Buffer }>("SELECT hash FROM document ORDER BY hash");
  for (const { hash } of hashes) {
    const { rows } = await pool.query<{ bytes: Buffer }>("SELECT bytes FROM document WHERE hash = $1", [
      hash,
    ]);
    if (!rows[0] || !isSameBytes(hashOfBytes(rows[0].bytes), hash))
      return {
        isSound: false,
        firstBadRecord: `document ${hexOf(hash)}`,
        reason: "its content is not what was written",
      };
    documents.add(hexOf(hash));
  }
  const { rows: benches } = await pool.query<BenchEnd>(
    "SELECT bench_id, row_count, head_hash FROM bench ORDER BY bench_id",
  );
  for (const bench of benches) {
    const fault = await faultOf(pool, bench, documents);
    if (fault) return { isSound: false, ...fault };
  }
  const { rows: aside } = await pool.query<{ n: string }>("SELECT count(*) AS n FROM row_set_aside");
  return {
    isSound: true,
    benchCount: benches.length,
    rowCount: benches.reduce((sum, { row_count: count }) => sum + Number(count), 0),
    documentCount: documents.size,
    setAsideCount: Number(aside[0]?.n ?? 0),
  };
}
