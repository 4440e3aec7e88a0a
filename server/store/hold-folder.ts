import Database from "better-sqlite3";
import { join } from "node:path";
import { StoreError, toStoreError } from "./store-error.ts";

/**
 * Holds a data folder for this process alone: two programs that append to one log would each break the chain of
 * the other. The lock is the operating system's and goes with the process, however it ends. Gives what lets go.
 *
 * @throws StoreError `in-use` where another process holds it, `lock-broken` where the lock file is none, and what else
 * a disk that is full or may not be written gives.
 */
export function holdFolder(folder: string): () => void {
  const path = join(folder, "in-use.lock");
  let database: Database.Database | undefined;
  try {
    database = new Database(path, { timeout: 0 });
    database.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    database?.close();
    const { code, facts } = toStoreError(error, path);
    if (code === "damaged") throw new StoreError("lock-broken", { path }, error);
    throw new StoreError(code, { ...facts, path: code === "in-use" ? folder : path }, error);
  }
  const held = database;
  return () => held.close();
}
