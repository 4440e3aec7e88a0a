import type { Pool, PoolClient } from "pg";
import { centreMigrations } from "./centre-migrations.ts";

/** The database is of a later version of this program, which knows what this one does not. */
export class NewerStoreError extends Error {
  readonly code = "newer-than-program";
}

/** A number that no other program locks: whoever migrates waits for whoever does already. */
const lockNumber = 471_100;

const ignored = (): void => undefined;

/** Runs something in one transaction of a connection of its own. */
export async function inTransaction<Found>(
  pool: Pool,
  run: (client: PoolClient) => Promise<Found>,
): Promise<Found> {
  const client = await pool.connect();
  // An engine that ends between two statements tells the connection alone; the next statement fails by it.
  client.on("error", ignored);
  try {
    await client.query("BEGIN");
    const found = await run(client);
    await client.query("COMMIT");
    client.off("error", ignored);
    client.release();
    return found;
  } catch (error) {
    // A connection that has failed is not used again.
    const isLost = await client.query("ROLLBACK").then(
      () => false,
      () => true,
    );
    if (!isLost) client.off("error", ignored);
    client.release(isLost);
    throw error;
  }
}

/**
 * Brings the store up to this version.
 *
 * @throws NewerStoreError, or what the engine gives.
 */
export async function migrateCentre(pool: Pool): Promise<void> {
  await inTransaction(pool, async (client) => {
    const copy = await client.query<{ is: boolean }>("SELECT pg_is_in_recovery() AS is");
    // A copy that follows another store has what that one has, and takes nothing of its own.
    if (copy.rows[0]?.is === true) return;
    await client.query("SELECT pg_advisory_xact_lock($1)", [lockNumber]);
    await client.query(
      "CREATE TABLE IF NOT EXISTS migration (version integer PRIMARY KEY, at timestamptz NOT NULL DEFAULT now())",
    );
    const { rows } = await client.query<{ version: number }>(
      "SELECT coalesce(max(version), 0) AS version FROM migration",
    );
    const found = rows[0]?.version ?? 0;
    if (found > centreMigrations.length)
      throw new NewerStoreError(
        `the store is of version ${found}, this program knows ${centreMigrations.length}`,
      );
    for (let version = found + 1; version <= centreMigrations.length; version += 1) {
      await client.query(centreMigrations[version - 1] ?? "");
      await client.query("INSERT INTO migration (version) VALUES ($1)", [version]);
    }
  });
}
