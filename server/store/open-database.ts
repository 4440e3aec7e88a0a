import Database from "better-sqlite3";
import { migrations } from "./migrations.ts";
import { StoreError, toStoreError } from "./store-error.ts";

export type Connection = Database.Database;

const full = 2;

/**
 * Sets what every connection must have and proves that it has it. The binding comes up at `synchronous` NORMAL
 * on a file that is in WAL mode already, and falls to it after the first table, so this runs after first use.
 *
 * @throws StoreError `not-durable` where the file system cannot do it.
 */
function makeDurable(database: Connection, path: string): void {
  database.pragma("synchronous = FULL");
  const journal = database.pragma("journal_mode", { simple: true });
  const synchronous = database.pragma("synchronous", { simple: true });
  if (journal !== "wal" || synchronous !== full)
    throw new StoreError("not-durable", { path, journal: String(journal), synchronous: String(synchronous) });
}

const versionOf = (database: Connection): number => Number(database.pragma("user_version", { simple: true }));

function migrate(database: Connection, path: string, steps: readonly string[]): void {
  const found = versionOf(database);
  if (found > steps.length) throw new StoreError("newer-than-program", { path, found, known: steps.length });
  steps.slice(found).forEach((step, index) => {
    database.transaction(() => {
      database.exec(step);
      database.pragma(`user_version = ${found + index + 1}`);
    })();
  });
}

/** The schema version of the records of this program. */
export const schemaVersion = migrations.length;

/**
 * Opens the records for writing and brings an older file up to date, step by step, never back. The file is
 * made where there is none.
 *
 * @throws StoreError `newer-than-program` for a file of a later version, `damaged` for one that cannot be read;
 * in both cases the file is left as it is.
 */
export function openForWriting(path: string, steps: readonly string[] = migrations): Connection {
  let database: Connection | undefined;
  try {
    database = new Database(path, { timeout: 2000 });
    // A later version is refused before anything is written, its journal mode included.
    const found = versionOf(database);
    if (found > steps.length)
      throw new StoreError("newer-than-program", { path, found, known: steps.length });
    database.pragma("journal_mode = WAL");
    database.pragma("synchronous = FULL");
    migrate(database, path, steps);
    // What a migration made must not lie in the write-ahead file alone: whoever copies the main file has it too.
    if (found < steps.length) database.pragma("wal_checkpoint(TRUNCATE)");
    database.prepare("SELECT count(*) FROM sqlite_schema").get();
    makeDurable(database, path);
    return database;
  } catch (error) {
    database?.close();
    throw toStoreError(error, path);
  }
}

/**
 * Opens the records for reading only. A reader never writes, but a checkpoint at its close may: it is held to
 * the same durability.
 *
 * @throws StoreError as `openForWriting`; a file of an older version is `failed`, it must be written once.
 */
export function openForReading(path: string): Connection {
  let database: Connection | undefined;
  try {
    database = new Database(path, { readonly: true, fileMustExist: true, timeout: 2000 });
    const found = versionOf(database);
    if (found > schemaVersion)
      throw new StoreError("newer-than-program", { path, found, known: schemaVersion });
    if (found < schemaVersion) throw new StoreError("failed", { path, reason: "older-than-program", found });
    database.prepare("SELECT count(*) FROM log_end").get();
    database.pragma("synchronous = FULL");
    if (database.pragma("synchronous", { simple: true }) !== full)
      throw new StoreError("not-durable", { path });
    return database;
  } catch (error) {
    database?.close();
    throw toStoreError(error, path);
  }
}

/** Opens a copy that nobody else has open, as one file with nothing beside it. @throws StoreError */
export function openPlain(path: string): Connection {
  let database: Connection | undefined;
  try {
    database = new Database(path, { fileMustExist: true });
    database.pragma("journal_mode = DELETE");
    return database;
  } catch (error) {
    database?.close();
    throw toStoreError(error, path);
  }
}

/** Proves once more, after the first append, that a connection writes through to the disk. */
export const assertDurable = (database: Connection, path: string): void => {
  if (database.pragma("synchronous", { simple: true }) !== full)
    throw new StoreError("not-durable", { path });
};

/** Which SQLite works under a connection. */
export const sqliteVersionOf = (database: Connection): string =>
  String(database.prepare("SELECT sqlite_version()").pluck().get());
