import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { systemClock } from "../../server/clock/system-clock.ts";
import { LogReader } from "../../server/store/log-reader.ts";
import { LogWriter } from "../../server/store/log-writer.ts";
import { openForReading, openForWriting } from "../../server/store/open-database.ts";
import { OtherLogs } from "../../server/store/other-logs.ts";
import { seeded } from "../seeded.ts";
import { fill, sortedMs } from "./attempts-speed.ts";
import { ms, type SpeedLine } from "./speed-line.ts";

const benchCount = 12;
/** Of one bench in a year: ten pieces of work a day on 200 days. */
const yearCount = 2000;
const sliceRowCount = 1000;

const documentsOf = (reader: LogReader, hashes: readonly string[]): Map<string, Uint8Array> =>
  new Map(hashes.flatMap((hash) => [[hash, reader.document(hash) ?? new Uint8Array()] as const]));

/** A year of a centre's benches at its desk: their rows taken over, and a page of all their attempts in any order. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const folder = mkdtempSync(join(tmpdir(), "spurwise-speed-"));
  const random = seeded(seed);
  try {
    const path = join(folder, "desk.db");
    const writing = openForWriting(path);
    const logs = new OtherLogs(writing, path, new LogWriter(writing, path, systemClock()).benchId);
    let takenMs = 0;
    for (let at = 0; at < benchCount; at += 1) {
      const benchPath = join(folder, `bench-${at}.db`);
      const bench = openForWriting(benchPath);
      const writer = new LogWriter(bench, benchPath, systemClock());
      fill(writer, random, yearCount, `attempt-${at}`);
      const reader = new LogReader(bench);
      let cursor: Parameters<LogReader["rowsAfter"]>[0];
      for (;;) {
        const rows = reader.rowsAfter(cursor, sliceRowCount);
        if (rows.length === 0) break;
        const startMs = performance.now();
        logs.take(rows, documentsOf(reader, logs.missing(rows)));
        takenMs += performance.now() - startMs;
        cursor = rows.at(-1);
      }
      bench.close();
    }
    writing.close();
    const database = openForReading(path);
    const listMs = sortedMs(
      database,
      random,
      () => `attempt-${Math.floor(random() * benchCount)}-${Math.floor(random() * yearCount)}`,
    );
    database.close();
    const what = `a year of ${benchCount} benches`;
    return [
      {
        what: `${what} listed in any order, narrowed or not, p95`,
        reached: ms(listMs),
        target: "50 ms",
        ok: listMs <= 50,
      },
      {
        what: `${what} taken over at the centre's desk`,
        reached: `${(takenMs / 1000).toFixed(1)} s`,
        target: "60 s",
        ok: takenMs <= 60_000,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
