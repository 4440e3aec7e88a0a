import type { Pool, PoolClient } from "pg";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { packedRow } from "../evidence/packed-row.schema.ts";
import { isNextPlace } from "../store/chain-proof.ts";
import { isSignatureOf } from "../store/log-signer.ts";
import { documentsNamedIn } from "../store/named-documents.ts";
import { hashOfBytes, hashOfRow, hexOf, isSameBytes, noHash } from "../store/row-hash.ts";
import {
  type Batch,
  batchLimits,
  type Head,
  type Place,
  signedOf,
  type Taken,
} from "./centre-messages.schema.ts";
import { appendRows, makePartition, monthOf } from "./centre-rows.ts";
import { inTransaction } from "./migrate-centre.ts";
import { isAfter } from "./place-order.ts";

interface BenchRecord {
  bench_id: string;
  centre: string;
  number: number;
  head_boot: number | null;
  head_sequence: number | null;
  head_hash: Buffer | null;
}

/** How far the log of a bench is at the centre. */
export interface BenchHead {
  benchId: string;
  centre: string;
  rowCount: number;
  head: Head | null;
  /** Rows that another log of the bench had at places that were known. */
  setAsideCount: number;
}

const placeOf = ({ boot, sequence }: Place): Place => ({ boot, sequence });
const isAt = (a: Place | null, b: Place | null): boolean =>
  a === b || (a !== null && b !== null && a.boot === b.boot && a.sequence === b.sequence);

/**
 * The logs of many benches in one PostgreSQL database. Rows come in batches, as often as the network takes to bring them:
 * a row is there once, in its place, by (bench, boot, sequence), and never replaced by another.
 */
export class CentreStore {
  readonly #pool: Pool;
  readonly #nowMs: () => number;

  constructor(pool: Pool, nowMs: () => number = Date.now) {
    this.#pool = pool;
    this.#nowMs = nowMs;
  }

  /** Puts a centre on the list, or gives it another name. */
  async keepCentre(id: string, name: string): Promise<void> {
    await this.#pool.query(
      "INSERT INTO centre (id, name) VALUES ($1, $2) ON CONFLICT (id) DO UPDATE SET name = excluded.name",
      [id, name],
    );
  }

  /** Puts a bench on the list of a centre, with the key it signs with. One that is there keeps its key. */
  async keepBench(bench: { benchId: string; centre: string; publicKey: string }): Promise<boolean> {
    const { rowCount } = await this.#pool.query(
      "INSERT INTO bench (bench_id, centre, public_key) VALUES ($1, $2, $3) ON CONFLICT DO NOTHING",
      [bench.benchId, bench.centre, bench.publicKey],
    );
    return rowCount === 1;
  }

  /** How far the log of each bench is here, and how many rows were set aside. */
  async heads(): Promise<BenchHead[]> {
    const { rows } = await this.#pool.query<BenchRecord & { row_count: string; aside: string }>(
      `SELECT bench.*, (SELECT count(*) FROM row_set_aside WHERE row_set_aside.bench_id = bench.bench_id) AS aside
       FROM bench ORDER BY centre, bench_id`,
    );
    return rows.map((row) => ({
      benchId: row.bench_id,
      centre: row.centre,
      rowCount: Number(row.row_count),
      head: headOf(row),
      setAsideCount: Number(row.aside),
    }));
  }

  /** True where a batch was signed by the bench it says it is of. */
  async isSigned(
    benchId: string,
    body: Uint8Array,
    signature: string,
  ): Promise<"yes" | "no" | "unknown-bench"> {
    const { rows } = await this.#pool.query<{ public_key: string }>(
      "SELECT public_key FROM bench WHERE bench_id = $1",
      [benchId],
    );
    const [bench] = rows;
    if (!bench) return "unknown-bench";
    return isSignatureOf(bench.public_key, signedOf(hexOf(hashOfBytes(body))), signature) ? "yes" : "no";
  }

  /**
   * Takes a batch, all of it or nothing; what is answered `taken` is durable.
   *
   * @throws what the engine gives; then nothing of it was taken.
   */
  async take(batch: Batch): Promise<Taken> {
    const broken = batch.rows.find(
      (row, at) =>
        row.benchId !== batch.benchId ||
        !isSameBytes(hashOfRow(row), row.hash) ||
        (at > 0 && !follows(row, batch.rows[at - 1])),
    );
    return (
      (broken ? undefined : await this.#takeNext(batch)) ??
      inTransaction(this.#pool, async (client) => {
        // Whoever sends for the same bench at once waits.
        const { rows } = await client.query<BenchRecord>(
          `SELECT bench_id, centre, number, head_boot, head_sequence, head_hash
           FROM bench JOIN centre ON centre.id = bench.centre WHERE bench_id = $1 FOR UPDATE OF bench`,
          [batch.benchId],
        );
        const [bench] = rows;
        if (!bench) return { what: "refused", why: "unknown-bench" };
        if (broken) return { what: "refused", why: "broken-row", at: placeOf(broken) };
        return this.#takeOf(client, bench, batch);
      })
    );
  }

  /** What comes nearly always: rows right after the last known one, that name no document. Undefined where it is not that. */
  async #takeNext({ after, rows, documents }: Batch): Promise<Taken | undefined> {
    const [first, last] = [rows[0], rows.at(-1)];
    if (!first || !last || documents.length > 0 || !follows(first, placeWithHash(after, first)))
      return undefined;
    if (rows.some((row) => documentsNamedIn(row).length > 0)) return undefined;
    const isTaken = await appendRows(this.#pool, this.#dated(rows));
    return isTaken && { what: "taken", head: { ...placeOf(last), hash: hexOf(last.hash) } };
  }

  #dated(rows: readonly LogRow[]): (LogRow & { month: string })[] {
    const nowMs = this.#nowMs();
    return rows.map((row) => ({ ...row, month: monthOf(row.wallMs, nowMs) }));
  }

  async #takeOf(client: PoolClient, bench: BenchRecord, { after, rows, documents }: Batch): Promise<Taken> {
    const head = headOf(bench);
    const known = rows.filter((row) => !isAfter(row, head));
    const other = await firstOther(client, known);
    if (other) return setAside(client, other);
    const fresh = rows.slice(known.length);
    const [first] = fresh;
    if (first && !isSameBytes(first.previousHash, bench.head_hash ?? noHash)) {
      // Right after the last known row another one was expected: the log has gone another way from there.
      const isNext = known.length > 0 || isAt(after, head);
      return isNext ? setAside(client, first) : { what: "gap", head };
    }
    if (first && !follows(first, withHash(bench)))
      return { what: "refused", why: "broken-row", at: placeOf(first) };
    await keepDocuments(client, documents);
    const missing = await missingDocuments(client, fresh);
    if (missing.length > 0) return { what: "wants", hashes: missing.slice(0, batchLimits.documents) };
    await this.#write(client, bench, fresh);
    const last = fresh.at(-1);
    return { what: "taken", head: last ? { ...placeOf(last), hash: hexOf(last.hash) } : head };
  }

  async #write(client: PoolClient, bench: BenchRecord, fresh: readonly LogRow[]): Promise<void> {
    if (fresh.length === 0) return;
    const dated = this.#dated(fresh);
    for (const month of new Set(dated.map(({ month: one }) => one)))
      await makePartition(client, { id: bench.centre, number: bench.number }, month);
    if (!(await appendRows(client, dated))) throw new Error("the head of the bench was moved meanwhile");
  }
}

const headOf = ({ head_boot: boot, head_sequence: sequence, head_hash: hash }: BenchRecord): Head | null =>
  boot === null || sequence === null || hash === null ? null : { boot, sequence, hash: hexOf(hash) };

const withHash = (bench: BenchRecord): (Place & { hash: Uint8Array }) | undefined => {
  const head = headOf(bench);
  return head && bench.head_hash ? { ...head, hash: bench.head_hash } : undefined;
};

/** The place that a batch is said to begin after, with the hash that its first row says stands there. */
const placeWithHash = (after: Place | null, { previousHash }: LogRow) =>
  after ? { ...after, hash: previousHash } : undefined;

/** True where a row stands right after another, or where there is none begins the log. */
function follows(row: LogRow, before: (Place & { hash: Uint8Array }) | undefined): boolean {
  return isNextPlace(row, before) && isSameBytes(row.previousHash, before?.hash ?? noHash);
}

/** The first of some rows that is here as another, or is not here though it should be. */
async function firstOther(client: PoolClient, known: readonly LogRow[]): Promise<LogRow | undefined> {
  if (known.length === 0) return undefined;
  const { rows } = await client.query<{ boot: number; sequence: number; hash: Buffer }>(
    `SELECT boot, sequence, hash FROM log_row
     WHERE bench_id = $1 AND (boot, sequence) IN (SELECT * FROM unnest($2::int[], $3::int[]))`,
    [known[0]?.benchId, known.map(({ boot }) => boot), known.map(({ sequence }) => sequence)],
  );
  const hashAt = new Map(rows.map(({ boot, sequence, hash }) => [`${boot} ${sequence}`, hash]));
  return known.find(({ boot, sequence, hash }) => {
    const here = hashAt.get(`${boot} ${sequence}`);
    return here === undefined || !isSameBytes(here, hash);
  });
}

async function setAside(client: PoolClient, row: LogRow): Promise<Taken> {
  await client.query(
    `INSERT INTO row_set_aside (bench_id, boot, sequence, hash, packed) VALUES ($1, $2, $3, $4, $5)
     ON CONFLICT DO NOTHING`,
    [row.benchId, row.boot, row.sequence, Buffer.from(row.hash), JSON.stringify(packedRow(row))],
  );
  return { what: "set-aside", at: placeOf(row) };
}

/** Keeps documents whose bytes are what their hash says; others are nobody's. */
async function keepDocuments(client: PoolClient, documents: Batch["documents"]): Promise<void> {
  for (const { hash, bytes } of documents)
    if (hexOf(hashOfBytes(bytes)) === hash)
      await client.query("INSERT INTO document (hash, bytes) VALUES ($1, $2) ON CONFLICT DO NOTHING", [
        Buffer.from(hash, "hex"),
        Buffer.from(bytes),
      ]);
}

/** Hashes of the documents that rows name and that are not here. */
async function missingDocuments(client: PoolClient, rows: readonly LogRow[]): Promise<string[]> {
  const named = [...new Set(rows.flatMap((row) => documentsNamedIn(row).map(({ hash }) => hash)))];
  if (named.length === 0) return [];
  const { rows: here } = await client.query<{ hash: Buffer }>(
    "SELECT hash FROM document WHERE hash = ANY ($1::bytea[])",
    [named.map((hash) => Buffer.from(hash, "hex"))],
  );
  const kept = new Set(here.map(({ hash }) => hexOf(hash)));
  return named.filter((hash) => !kept.has(hash));
}
