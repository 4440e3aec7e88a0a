import Database from "better-sqlite3";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Connection } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";

const keptSchema = z.array(
  z.strictObject({
    of: z.enum(["person", "address"]),
    name: z.string().max(200),
    level: z.number().min(0).max(1000),
    waitMs: z.number().min(0).max(3_600_000),
  }),
);

/** Somebody who is made to wait: by what they are known, how often they were wrong, and how long the wait was. */
export type KeptTries = z.infer<typeof keptSchema>[number];

const key = "guesses";

/** Keeps over a restart who is made to wait; not evidence, so not in the log. */
export class GuessMemory {
  readonly #reading: Connection;
  readonly #writing: Connection;

  constructor(reading: Connection, writing: Connection) {
    this.#reading = reading;
    this.#writing = writing;
  }

  /** Who was made to wait; nobody where what was kept is none. @throws StoreError `damaged` */
  read(): KeptTries[] {
    const kept = readThrough(this.#reading, () =>
      this.#reading
        .prepare<[string], { json: string }>("SELECT json FROM bench_memory WHERE key = ?")
        .get(key),
    );
    try {
      const parsed = parseSafely(keptSchema, JSON.parse(kept?.json ?? "[]"));
      return parsed.success ? parsed.data : [];
    } catch {
      return [];
    }
  }

  /** Keeps them; a disk that takes nothing changes nothing of the waits until the next restart. */
  write(tries: readonly KeptTries[]): void {
    try {
      this.#writing
        .prepare(
          "INSERT INTO bench_memory (key, json) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET json = excluded.json",
        )
        .run(key, JSON.stringify(tries));
    } catch (error) {
      // The records say their own trouble with the next event.
      if (!(error instanceof Database.SqliteError)) throw error;
    }
  }
}
