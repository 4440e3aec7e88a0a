import Database from "better-sqlite3";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { systemClock } from "../../server/clock/system-clock.ts";
import { LogWriter } from "../../server/store/log-writer.ts";
import { bytesOfEvent } from "../../server/store/event-bytes.ts";
import { openForWriting } from "../../server/store/open-database.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { quantile, type SpeedLine, timedMs } from "./speed-line.ts";

const events = 300;

/** An event durable in the log against a bare insert of the same bytes with the same pragmas, turn by turn. */
export const lines = async (): Promise<SpeedLine[]> => {
  const folder = mkdtempSync(join(tmpdir(), "spurwise-speed-"));
  try {
    const path = join(folder, "log.db");
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, systemClock());
    const bare = new Database(join(folder, "bare.db"));
    bare.pragma("journal_mode = WAL");
    bare.exec("CREATE TABLE event (id INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT");
    bare.pragma("synchronous = FULL");
    const insert = bare.prepare("INSERT INTO event (bytes) VALUES (?)");
    const content = { added: ["socket-1.a.L~socket-2.b.L"], removed: [], note: "x".repeat(200) };
    const bytes = bytesOfEvent(content, byBench);
    const logMs: number[] = [];
    const bareMs: number[] = [];
    for (let turn = 0; turn < events; turn += 1) {
      logMs.push(
        timedMs(() => writer.append([{ attemptId: null, type: "sensed", author: byBench, content }])),
      );
      bareMs.push(timedMs(() => insert.run(bytes)));
    }
    database.close();
    bare.close();
    const ratio = quantile(logMs, 0.5) / quantile(bareMs, 0.5);
    return [
      {
        what: "an event durable in the log against a bare insert",
        reached: `${ratio.toFixed(2)} x`,
        target: "1.3 x",
        ok: ratio <= 1.3,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
