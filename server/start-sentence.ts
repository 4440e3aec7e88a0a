import { EnvironmentError } from "./environment.ts";
import { UnusableFileError } from "./library.ts";
import { StoreError } from "./store/store-error.ts";

/** What stands in the way of a start, in one sentence, where it is something the one who starts can see to. */
export function sentenceFor(error: unknown): string | undefined {
  if (error instanceof EnvironmentError || error instanceof UnusableFileError) return error.message;
  if (error instanceof StoreError) {
    const { code, facts } = error;
    if (code === "newer-than-program")
      return `the log ${String(facts["path"])} was written by a newer version (${facts["found"]}, this one knows ${facts["known"]}). It was not touched. Update Spurwise.`;
    if (code === "in-use")
      return `the data folder ${String(facts["path"])} is in use by another Spurwise. Stop that one, or set SPURWISE_DATA to another folder.`;
    const path = String(facts["path"]);
    if (code === "lock-broken")
      return `the file ${path} is broken. It holds nothing; remove it and start again.`;
    if (code === "secret-broken")
      return `the file ${path} is broken. Without it nobody's badge or name can be read: bring it back from a back-up.`;
    if (code === "wrong-passphrase")
      return `${path} is sealed with a passphrase, and this is not it. Set SPURWISE_BACKUP_PASSPHRASE to the one it was made with.`;
    if (code === "disk-full")
      return `the disk is full: ${path} cannot be written. Make room, or set SPURWISE_DATA to a folder on another disk.`;
    if (code === "read-only")
      return `${path} may not be written. Check who owns the data folder and whether the disk is read-only, or set SPURWISE_DATA to another folder.`;
    return `the log ${String(facts["path"])} cannot be opened (${code}: ${String(facts["reason"] ?? "")}).`;
  }
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "EADDRINUSE")
    return "the port is in use. Stop the other program, or set SPURWISE_PORT to another port.";
  const path = error instanceof Error && "path" in error ? String(error.path) : "";
  if (code === "EEXIST" || code === "ENOTDIR")
    return `the data folder ${path} is a file or lies in one. Set SPURWISE_DATA to a folder.`;
  // What makes a folder with all above it says so of a disk that is read-only.
  if (code === "ENOENT" && error instanceof Error && "syscall" in error && error.syscall === "mkdir")
    return `the data folder ${path} cannot be made. Check whether the disk is there and may be written, or set SPURWISE_DATA to another folder.`;
  if (code === "EROFS")
    return `the data folder ${path} lies on a disk that is read-only. Set SPURWISE_DATA to another folder.`;
  if (code === "ENOSPC")
    return `the disk is full: ${path} cannot be made. Make room, or set SPURWISE_DATA to a folder on another disk.`;
  if (code === "EACCES") return "the port or the data folder may not be used by this user.";
  return undefined;
}
