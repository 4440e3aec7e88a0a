import type { Pool, PoolClient } from "pg";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { noHash } from "../store/row-hash.ts";

/** Rows dated by a clock that was not set lie in the month they came in: no bench makes partitions without end. */
const earliestMs = Date.UTC(2024, 0, 1);

/** The month a row belongs to, as the first of it. */
export function monthOf(wallMs: number, nowMs: number): string {
  const isLikely = wallMs >= earliestMs && wallMs <= nowMs + 24 * 3_600_000;
  return `${new Date(isLikely ? wallMs : nowMs).toISOString().slice(0, 7)}-01`;
}

function monthAfter(month: string): string {
  const [year = 0, number = 0] = month.split("-").map(Number);
  return new Date(Date.UTC(year, number, 1)).toISOString().slice(0, 10);
}

const monthPattern = /^\d{4}-\d{2}-01$/;

/**
 * Makes the partition of a centre's month where it is not there. The names hold a number and a month alone: nothing that
 * came from outside stands in a statement.
 */
export async function makePartition(
  client: PoolClient,
  centre: { id: string; number: number },
  month: string,
): Promise<void> {
  if (!monthPattern.test(month)) throw new Error(`no month: ${month}`);
  const ofCentre = `log_row_${centre.number}`;
  const ofMonth = `${ofCentre}_${month.slice(0, 7).replace("-", "_")}`;
  const { rows } = await client.query<{ found: string | null }>("SELECT to_regclass($1) AS found", [ofMonth]);
  if (rows[0]?.found !== null) return;
  // Two benches of a centre may need it at once.
  await client.query("SELECT pg_advisory_xact_lock(471101, $1)", [centre.number]);
  await client.query(
    `CREATE TABLE IF NOT EXISTS ${ofCentre} PARTITION OF log_row
     FOR VALUES IN (${client.escapeLiteral(centre.id)}) PARTITION BY RANGE (month)`,
  );
  await client.query(
    `CREATE TABLE IF NOT EXISTS ${ofMonth} PARTITION OF ${ofCentre}
     FOR VALUES FROM ('${month}') TO ('${monthAfter(month)}')`,
  );
}

const rowColumns = `month, bench_id, boot, sequence, attempt_id, type, bytes, previous_hash, hash, monotonic_ms,
  wall_ms, clock_state`;

type DatedRow = LogRow & { month: string };

/** The columns of rows, one list each. */
const columnsOf = (rows: readonly DatedRow[]): unknown[] => [
  rows.map(({ month }) => month),
  rows.map(({ benchId }) => benchId),
  rows.map(({ boot }) => boot),
  rows.map(({ sequence }) => sequence),
  rows.map(({ attemptId }) => attemptId),
  rows.map(({ type }) => type),
  rows.map(({ bytes }) => Buffer.from(bytes)),
  rows.map(({ previousHash }) => Buffer.from(previousHash)),
  rows.map(({ hash }) => Buffer.from(hash)),
  rows.map(({ monotonicMs }) => monotonicMs),
  rows.map(({ wallMs }) => wallMs),
  rows.map(({ clockState }) => clockState),
];

/** No partition takes the row, as the engine says it. */
const noPartition = "23514";

/**
 * Writes rows right after the head of their bench in one statement, and moves the head; undefined where the head is
 * elsewhere, and where there is no partition for them yet. Nothing is written then.
 */
export async function appendRows(
  client: Pool | PoolClient,
  rows: readonly DatedRow[],
): Promise<true | undefined> {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return undefined;
  try {
    const { rowCount } = await client.query({
      name: "append-rows",
      text: `WITH moved AS (
          UPDATE bench SET head_boot = $14, head_sequence = $15, head_hash = $16, row_count = row_count + $17
          WHERE bench_id = $1 AND head_hash IS NOT DISTINCT FROM $18 RETURNING centre
        )
        INSERT INTO log_row (centre, ${rowColumns})
        SELECT moved.centre, new_row.* FROM moved, unnest($2::date[], $3::text[], $4::int[], $5::int[], $6::text[],
          $7::text[], $8::bytea[], $9::bytea[], $10::bytea[], $11::bigint[], $12::bigint[], $13::text[]) AS new_row`,
      values: [
        first.benchId,
        ...columnsOf(rows),
        last.boot,
        last.sequence,
        Buffer.from(last.hash),
        rows.length,
        Buffer.compare(first.previousHash, noHash) === 0 ? null : Buffer.from(first.previousHash),
      ],
    });
    return rowCount === rows.length ? true : undefined;
  } catch (error) {
    if ((error as { code?: string }).code === noPartition) return undefined;
    throw error;
  }
}

/** A row as the engine gives it, in the shape of a record of a bench's own log: long numbers come as texts. */
export const recordOfCentre = (record: Record<string, unknown>): Record<string, unknown> => ({
  ...record,
  monotonic_ms: Number(record["monotonic_ms"]),
  wall_ms: Number(record["wall_ms"]),
});
