import { CentreStore } from "../../server/centre/centre-store.ts";
import { migrateCentre } from "../../server/centre/migrate-centre.ts";
import { bytesOfEvent } from "../../server/store/event-bytes.ts";
import { hashOfRow, noHash } from "../../server/store/row-hash.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { seeded } from "../seeded.ts";
import { postgresPrograms, PrivatePostgres } from "../server/centre/private-postgres.ts";
import { ms, quantile, type SpeedLine } from "./speed-line.ts";

const benchCount = 10_000;
const centreCount = 50;
/** Events a second of all benches together at the busiest hour, and for so many seconds. */
const peakPerSecond = 460;
const peakSeconds = 10;
const monthRowCount = 50_000;
const batchRowCount = 500;

/** A bench as far as its log goes: each row follows the one before. */
class Sender {
  #previousHash = noHash;
  #sequence = 0;

  constructor(readonly benchId: string) {}

  rows(count: number): LogRow[] {
    return Array.from({ length: count }, () => {
      const content = { added: [`socket-${this.#sequence % 60}.a.L~socket-1.b.L`], removed: [] };
      const row = {
        benchId: this.benchId,
        boot: 1,
        sequence: this.#sequence,
        attemptId: `attempt-${this.benchId}`,
        type: "sensed" as const,
        bytes: bytesOfEvent(content, byBench),
        previousHash: this.#previousHash,
        monotonicMs: this.#sequence * 1000,
        wallMs: Date.now(),
        clockState: "synced" as const,
      };
      const hash = hashOfRow(row);
      this.#previousHash = hash;
      this.#sequence += 1;
      return { ...row, hash };
    });
  }
}

const taken = async (store: CentreStore, rows: readonly LogRow[]): Promise<void> => {
  const [first] = rows;
  if (!first) return;
  const after = first.sequence === 0 ? null : { boot: 1, sequence: first.sequence - 1 };
  const batch = { benchId: first.benchId, after, rows, documents: [] };
  const { what } = await store.take(batch as never);
  if (what !== "taken") throw new Error(`a batch was ${what}`);
};

/** Batches come when they come, whether or not the store has answered those before: how long each waits for its answer. */
async function peak(store: CentreStore, senders: readonly Sender[], random: () => number): Promise<number[]> {
  const waits: number[] = [];
  const going: Promise<void>[] = [];
  const busy = new Set<Sender>();
  const startMs = performance.now();
  for (let at = 0; at < peakPerSecond * peakSeconds; at += 1) {
    const dueMs = startMs + (at * 1000) / peakPerSecond;
    while (performance.now() < dueMs) await new Promise((turn) => setTimeout(turn, 1));
    let sender = senders[Math.floor(random() * senders.length)]!;
    // A bench waits for the answer to its last batch before the next.
    while (busy.has(sender)) sender = senders[Math.floor(random() * senders.length)]!;
    busy.add(sender);
    going.push(
      taken(store, sender.rows(1)).then(() => {
        busy.delete(sender);
        waits.push(performance.now() - dueMs);
      }),
    );
  }
  await Promise.all(going);
  return waits;
}

/** The store of a centre on PostgreSQL, on this machine's disk: many benches at once, and one that was long away. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const programs = postgresPrograms();
  if (!programs) throw new Error("PostgreSQL is not installed");
  const postgres = new PrivatePostgres(programs, { onDisk: true });
  try {
    await postgres.start();
    const pool = postgres.pool();
    await migrateCentre(pool);
    const store = new CentreStore(pool);
    for (let at = 0; at < centreCount; at += 1) await store.keepCentre(`centre-${at}`, `Centre ${at}`);
    await pool.query(
      `INSERT INTO bench (bench_id, centre, public_key)
       SELECT 'bench-' || n, 'centre-' || n % $1, '' FROM generate_series(0, $2 - 1) AS n`,
      [centreCount, benchCount],
    );
    const senders = Array.from({ length: benchCount }, (_, at) => new Sender(`bench-${at}`));
    // The month's partition of every centre is made by its first row.
    for (const sender of senders.slice(0, centreCount)) await taken(store, sender.rows(1));
    const waits = await peak(store, senders.slice(centreCount), seeded(seed));
    const p99Ms = quantile(waits, 0.99);
    const away = senders[0]!;
    const startMs = performance.now();
    for (let sent = 0; sent < monthRowCount; sent += batchRowCount)
      await taken(store, away.rows(batchRowCount));
    const seconds = (performance.now() - startMs) / 1000;
    await pool.end();
    return [
      {
        what: `${benchCount} benches, ${peakPerSecond} events a second on one store, p99`,
        reached: ms(p99Ms),
        target: "50 ms",
        ok: p99Ms <= 50,
      },
      {
        what: `a bench that was a month away, ${monthRowCount} events, is caught up`,
        reached: `${seconds.toFixed(1)} s`,
        target: "60 s",
        ok: seconds <= 60,
      },
    ];
  } finally {
    await postgres.remove();
  }
};
