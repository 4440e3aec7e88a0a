import type { Connection } from "./open-database.ts";
import { StoreError, toStoreError } from "./store-error.ts";

/** What a read threw: a database that is busy, or else one that cannot be read as it should be. */
function toReadError(error: unknown, path: string): StoreError {
  const storeError = toStoreError(error, path);
  if (error instanceof StoreError || storeError.code === "in-use") return storeError;
  return new StoreError("damaged", storeError.facts, error);
}

/**
 * The one door through which the records are read: whatever goes wrong behind it is a StoreError. A page that cannot
 * be read, one that is too short or one that holds something else is damage, never a full disk.
 *
 * @throws StoreError `damaged` or `in-use`.
 */
export function readThrough<T>(database: Connection, read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw toReadError(error, database.name);
  }
}

/** The door for what is read one at a time, while somebody works with it. @throws StoreError as `readThrough`. */
export function* readEachThrough<T>(database: Connection, read: () => Iterable<T>): Generator<T> {
  const reading = readThrough(database, () => read()[Symbol.iterator]());
  try {
    for (;;) {
      const step = readThrough(database, () => reading.next());
      if (step.done) return;
      yield step.value;
    }
  } finally {
    reading.return?.();
  }
}
