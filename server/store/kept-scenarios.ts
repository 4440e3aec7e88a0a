import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { ownScenarioStates } from "../../shared/protocol/author-view.ts";
import { jsonOf } from "./json-of.ts";
import type { Connection } from "./open-database.ts";
import { readThrough } from "./read-through.ts";
import { toStoreError } from "./store-error.ts";

const keptScenarioSchema = z.strictObject({
  /** Of the document that holds it, in hexadecimal. */
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  state: z.enum(ownScenarioStates),
});
export type KeptScenario = z.infer<typeof keptScenarioSchema>;

const keyOf = (id: string): string => `scenario:${id}`;

/**
 * Which scenarios of its own a bench has, and as what. Each is a document of the log, which also says who made it; here
 * stands only which of them is the one in use.
 */
export class KeptScenarios {
  readonly #database: Connection;
  readonly #path: string;

  constructor(database: Connection, path: string) {
    this.#database = database;
    this.#path = path;
  }

  /** By the id of the scenario. A row that cannot be understood is left out. */
  all(): Map<string, KeptScenario> {
    const rows = readThrough(this.#database, () =>
      this.#database
        .prepare<[], { key: string; json: string }>(
          "SELECT key, json FROM bench_memory WHERE key GLOB 'scenario:*' ORDER BY key",
        )
        .all(),
    );
    return new Map(
      rows.flatMap(({ key, json }): [string, KeptScenario][] => {
        const parsed = parseSafely(keptScenarioSchema, jsonOf(json));
        return parsed.success ? [[key.slice(keyOf("").length), parsed.data]] : [];
      }),
    );
  }

  /** @throws StoreError `disk-full` and others; then what was kept before is still there. */
  keep(id: string, kept: KeptScenario): void {
    this.#run(
      "INSERT INTO bench_memory (key, json) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET json = excluded.json",
      keyOf(id),
      JSON.stringify(kept),
    );
  }

  /** Forgets which is in use; the documents stay in the log. @throws StoreError as `keep` does. */
  withdraw(id: string): void {
    this.#run("DELETE FROM bench_memory WHERE key = ?", keyOf(id));
  }

  #run(statement: string, ...values: string[]): void {
    try {
      this.#database.prepare(statement).run(...values);
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
  }
}
