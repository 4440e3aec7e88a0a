import { PeopleTold } from "../people/person-fault.ts";
import { type ChainEnd, ChainProof, nameOfRow } from "./chain-proof.ts";
import { hashOfBytes, hexOf, isSameBytes } from "./row-hash.ts";
import type { Connection } from "./open-database.ts";
import { rowOfRecord } from "./row-of-record.ts";
import { schemaFault } from "./schema-fault.ts";
import { toStoreError } from "./store-error.ts";

/** What a check of the log came to. `firstBadRecord` names the first record that is not as it was written. */
export type LogProof =
  | { isSound: true; rowCount: number; documentCount: number; publicKey?: string }
  | { isSound: false; rowCount: number; firstBadRecord: string; reason: string };

/**
 * Walks the log from its first record and proves each against the one before: its form, its place in the
 * order, the hash before and its own; then that no record is missing at the end, and every document against
 * its hash. Yields after each slice of `sliceRowCount` records, so that a caller can do other work between.
 */
export function* proveLog(database: Connection, sliceRowCount: number): Generator<number, LogProof> {
  const at: Progress = { rowCount: 0, name: undefined };
  const isInOne = database.inTransaction;
  try {
    if (!isInOne) database.exec("BEGIN");
    return yield* provedRows(database, sliceRowCount, at);
  } catch (error) {
    // A page that cannot be read ends the walk; what was found until then is said.
    const { facts } = toStoreError(error, database.name);
    return {
      isSound: false,
      rowCount: at.rowCount,
      firstBadRecord: at.name ? `what follows ${at.name}` : "the first record",
      reason: `the file cannot be read there (${String(facts["reason"])})`,
    };
  } finally {
    // Nothing was written in it; an error of the file may have ended it.
    if (!isInOne && database.inTransaction) database.exec("ROLLBACK");
  }
}

/** How far a check has come: how many records were good, and the last of them. */
interface Progress {
  rowCount: number;
  name: string | undefined;
}

function* provedRows(database: Connection, sliceRowCount: number, at: Progress): Generator<number, LogProof> {
  let rowCount = 0;
  const own = database.prepare<[], string>("SELECT bench_id FROM bench").pluck().get();
  let publicKey: string | undefined;
  const people = new PeopleTold();
  const bad = (firstBadRecord: string, reason: string): LogProof => ({
    isSound: false,
    rowCount,
    firstBadRecord,
    reason,
  });
  const endOf = database.prepare<[string], { row_count: number; hash: Uint8Array }>(
    "SELECT row_count, hash FROM log_end WHERE bench_id = ?",
  );
  const documentOf = database.prepare<[Uint8Array]>("SELECT 1 FROM document WHERE hash = ?");
  const chain = new ChainProof((hash) => documentOf.get(Buffer.from(hash, "hex")) !== undefined);
  const endIsWrong = (ended: ChainEnd): LogProof | undefined => {
    const end = endOf.get(ended.benchId);
    if (end?.row_count === ended.rowCount && isSameBytes(end.hash, ended.hash)) return undefined;
    return bad(
      nameOfRow(ended.benchId, ended.boot, ended.sequence + 1),
      end ? `${end.row_count} records were written, ${ended.rowCount} are there` : "the end mark is missing",
    );
  };

  for (const record of recordsInSlices(database, sliceRowCount)) {
    if (record === undefined) {
      yield rowCount;
      continue;
    }
    const row = rowOfRecord(record);
    const { bench_id, boot, sequence } = record as Record<string, unknown>;
    const name = nameOfRow(bench_id, boot, sequence);
    if (!row) return bad(name, "it is not in the form of a record");
    const ended = chain.end;
    const wrong = ended && ended.benchId !== row.benchId ? endIsWrong(ended) : undefined;
    if (wrong) return wrong;
    const fault = chain.fault(row);
    if (fault) return bad(name, fault);
    // The people of other benches are not on this one's list, nor are those benches' keys its own.
    if (row.benchId === own) {
      people.take(row);
      publicKey = chain.publicKey;
    }
    rowCount += 1;
    Object.assign(at, { rowCount, name });
  }
  const wrong = chain.end && endIsWrong(chain.end);
  if (wrong) return wrong;
  const orphan = database
    .prepare<[], { bench_id: string }>(
      "SELECT bench_id FROM log_end WHERE row_count > 0 AND bench_id NOT IN (SELECT bench_id FROM log)",
    )
    .get();
  if (orphan) return bad(nameOfRow(orphan.bench_id, 1, 0), "all records of this bench are missing");

  let documentCount = 0;
  const documents = database.prepare<[], { hash: Uint8Array; kind: string; bytes: Uint8Array }>(
    "SELECT hash, kind, bytes FROM document ORDER BY hash",
  );
  for (const { hash, kind, bytes } of documents.all()) {
    if (!isSameBytes(hashOfBytes(bytes), hash))
      return bad(`document ${hexOf(hash)} (${kind})`, "its content is not what was written");
    documentCount += 1;
  }
  const person = people.fault(database);
  if (person) return bad(`person ${person.person}`, person.reason);
  const fault = schemaFault(database);
  if (fault) return bad("the log's own rules", fault);
  return { isSound: true, rowCount, documentCount, ...(publicKey === undefined ? {} : { publicKey }) };
}

/** Every record of the log in order, with undefined after each slice. */
function* recordsInSlices(database: Connection, sliceRowCount: number): Generator<object | undefined> {
  const next = database.prepare<[string, number, number, number], Record<string, unknown>>(`
    SELECT * FROM log WHERE (bench_id, boot, sequence) > (?, ?, ?)
    ORDER BY bench_id, boot, sequence LIMIT ?`);
  let from: [string, number, number] = ["", 0, 0];
  for (;;) {
    const records = next.all(...from, sliceRowCount);
    yield* records;
    const last = records.at(-1);
    if (!last || records.length < sliceRowCount) return;
    from = [String(last["bench_id"]), Number(last["boot"]), Number(last["sequence"])];
    yield undefined;
  }
}

/**
 * Checks a whole log in one go. Finds any edit of any record, removed and re-ordered ones included. It proves
 * that nothing was changed by accident or by somebody who did not make the chain anew; no more.
 */
export function verifyLog(database: Connection): LogProof {
  const proof = proveLog(database, 1000);
  for (;;) {
    const step = proof.next();
    if (step.done) return step.value;
  }
}
