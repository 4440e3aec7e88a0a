import { z } from "zod";
import { eventTypes, type LogRow } from "../../shared/protocol/log-row.ts";

const bytes = z.instanceof(Uint8Array);

/** A record of the log table as the database gives it. */
const recordSchema = z.object({
  bench_id: z.string(),
  boot: z.number().int(),
  sequence: z.number().int(),
  attempt_id: z.string().nullable(),
  type: z.enum(eventTypes),
  bytes,
  previous_hash: bytes,
  hash: bytes,
  monotonic_ms: z.number().int(),
  wall_ms: z.number().int(),
  clock_state: z.enum(["synced", "battery", "unsynced"]),
});

/** The row of a database record, or undefined where the record is not one this program could have written. */
export function rowOfRecord(record: unknown): LogRow | undefined {
  const parsed = recordSchema.safeParse(record);
  if (!parsed.success) return undefined;
  const { data } = parsed;
  return {
    benchId: data.bench_id,
    boot: data.boot,
    sequence: data.sequence,
    attemptId: data.attempt_id,
    type: data.type,
    bytes: data.bytes,
    previousHash: data.previous_hash,
    hash: data.hash,
    monotonicMs: data.monotonic_ms,
    wallMs: data.wall_ms,
    clockState: data.clock_state,
  };
}
