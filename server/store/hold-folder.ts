import Database from "better-sqlite3";
import { join } from "node:path";
import { StoreError } from "./store-error.ts";

/**
 * Holds a data folder for this process alone: two programs that append to one log would each break the chain of
 * the other. The lock is the operating system's and goes with the process, however it ends. Gives what lets go.
 *
 * @throws StoreError `in-use` where another process holds it.
 */
export function holdFolder(folder: string): () => void {
  const path = join(folder, "in-use.lock");
  const database = new Database(path, { timeout: 0 });
  try {
    database.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    database.close();
    throw new StoreError("in-use", { path: folder }, error);
  }
  return () => database.close();
}
