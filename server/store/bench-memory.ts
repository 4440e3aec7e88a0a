import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { languages } from "../../shared/text/languages.ts";
import { hiddenFaultSchema } from "../../shared/wiring/hidden-fault.schema.ts";
import { jsonOf } from "./json-of.ts";
import type { Connection } from "./open-database.ts";
import { readThrough } from "./read-through.ts";
import { toStoreError } from "./store-error.ts";

/** What the bench screen was set to and who stood at it; not evidence, so not in the log. */
export const benchMemorySchema = z.strictObject({
  language: z.enum(languages).default("en"),
  isLarge: z.boolean().default(false),
  person: z
    .strictObject({ learnerId: z.string().nullable(), by: z.enum(["name", "badge", "guest"]) })
    .nullable()
    .default(null),
  /** A technician has chosen to let the network in. */
  isNetworkChosen: z.boolean().default(false),
  /** What a trainer hid for the next start of a task, and who. */
  hiddenNext: z
    .array(z.strictObject({ scenario: z.string(), faults: z.array(hiddenFaultSchema), person: z.string() }))
    .optional(),
  /** How the last self-check ended, and of which board it was. */
  lastSelfCheck: z
    .strictObject({ board: z.string(), faultCount: z.number().int().min(0), wallMs: z.number() })
    .optional(),
});
export type BenchMemory = z.infer<typeof benchMemorySchema>;

const key = "bench";

/** Reads what the bench remembers over a restart. */
export class BenchMemoryReader {
  readonly #database: Connection;

  constructor(database: Connection) {
    this.#database = database;
  }

  /** What was kept, or the defaults where nothing was or where it cannot be read. */
  read(): BenchMemory {
    const kept = readThrough(this.#database, () =>
      this.#database
        .prepare<[string], { json: string }>("SELECT json FROM bench_memory WHERE key = ?")
        .get(key),
    );
    const parsed = parseSafely(benchMemorySchema, kept ? jsonOf(kept.json) : {});
    return parsed.success ? parsed.data : benchMemorySchema.parse({});
  }
}

/** Writes what the bench remembers, whole, in one statement. */
export class BenchMemoryWriter {
  readonly #database: Connection;
  readonly #path: string;

  constructor(database: Connection, path: string) {
    this.#database = database;
    this.#path = path;
  }

  /** @throws StoreError `disk-full` and others; then what was kept before is still there. */
  write(memory: BenchMemory): void {
    try {
      this.#database
        .prepare(
          "INSERT INTO bench_memory (key, json) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET json = excluded.json",
        )
        .run(key, JSON.stringify(memory));
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
  }
}
