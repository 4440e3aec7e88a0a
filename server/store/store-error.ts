/** What went wrong with the records, by code; callers test `code`, never the text. */
export type StoreErrorCode =
  | "disk-full"
  | "damaged"
  | "newer-than-program"
  | "not-durable"
  | "clock-before-epoch"
  | "in-use"
  | "lock-broken"
  | "secret-broken"
  | "wrong-passphrase"
  | "read-only"
  | "failed";

/** The records could not be read or written: a broken machine, not a learner's mistake. */
export class StoreError extends Error {
  constructor(
    readonly code: StoreErrorCode,
    readonly facts: Record<string, string | number>,
    cause?: unknown,
  ) {
    super(`${code} ${JSON.stringify(facts)}`, { cause });
    this.name = "StoreError";
  }
}

const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";

const writeDenied = new Set(["EROFS", "EACCES", "EPERM"]);

const readCodes = new Set([
  "SQLITE_IOERR_READ",
  "SQLITE_IOERR_SHORT_READ",
  "SQLITE_IOERR_CORRUPTFS",
  "SQLITE_IOERR_DATA",
]);

/**
 * Turns what the database threw into a StoreError. A full disk shows as SQLITE_FULL, and on some file systems
 * as an input/output error of a write; a file that is no database, or broken inside, as CORRUPT or NOTADB; one that
 * ends too early, or whose sectors cannot be read, as an input/output error of a read.
 */
export function toStoreError(error: unknown, path: string): StoreError {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  const facts = { path, reason: code || String(error) };
  if (readCodes.has(code)) return new StoreError("damaged", facts, error);
  if (code === "SQLITE_FULL" || code.startsWith("SQLITE_IOERR") || code === "ENOSPC")
    return new StoreError("disk-full", facts, error);
  if (code.startsWith("SQLITE_READONLY") || code.startsWith("SQLITE_CANTOPEN") || writeDenied.has(code))
    return new StoreError("read-only", facts, error);
  if (code.startsWith("SQLITE_CORRUPT") || code === "SQLITE_NOTADB")
    return new StoreError("damaged", facts, error);
  if (code.startsWith("SQLITE_BUSY")) return new StoreError("in-use", facts, error);
  return new StoreError("failed", facts, error);
}
