import { closeSync, fchmodSync, fsyncSync, openSync, renameSync, writeSync } from "node:fs";
import { dirname } from "node:path";

/** Who may read a file: whoever may enter its folder, or the bench's own user alone. */
export const fileModes = { usual: 0o644, secret: 0o600 } as const;

/**
 * Puts a file in the place of the one that was there, whole or not at all, and on the disk when it returns.
 *
 * @throws a file system error; then the file of before still stands.
 */
export function writeWhole(path: string, text: string, mode: number = fileModes.usual): void {
  const file = openSync(`${path}.new`, "w", mode);
  try {
    setMode(file, mode);
    writeSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(`${path}.new`, path);
  syncPath(dirname(path));
}

/** A file that was left from before keeps its own mode when it is opened. A stick may know of no modes. */
function setMode(file: number, mode: number): void {
  try {
    fchmodSync(file, mode);
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EPERM")) throw error;
  }
}

/** Brings a file, or the names in a folder, onto the disk. @throws a file system error. */
export function syncPath(path: string): void {
  const opened = openSync(path, "r");
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}
