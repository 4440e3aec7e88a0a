import { closeSync, openSync, readdirSync, readSync } from "node:fs";
import { join } from "node:path";
import type { Read } from "../../shared/reading/problem.ts";

/** Larger than any file of ours by far; a slip of the hand should not fill the memory. */
const largestBytes = 8_000_000;

/**
 * Reads a file by one of the readers of shared/. A file that is not there, is too large or is no text is a problem
 * like any other: with the file's name and a remedy, never thrown.
 */
export function readFileWith<T>(path: string, read: (text: string, fileName: string) => Read<T>): Read<T> {
  const unusable = (message: string, remedy: string): Read<T> => ({
    ok: false,
    problems: [{ file: path, field: "the whole file", message, remedy }],
  });
  try {
    const bytes = readAtMost(path, largestBytes);
    if (!bytes) return unusable("it is larger than 8 MB", "Check that it is the file you meant.");
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return read(text, path);
  } catch (error) {
    if (error instanceof TypeError) return unusable("it is not UTF-8 text", "Save it as UTF-8.");
    const code = (error as NodeJS.ErrnoException).code ?? "unknown";
    if (code === "ENOENT") return unusable("it is not there", "Check the name and the folder.");
    if (code === "EISDIR") return unusable("it is a folder", "Name a file in it.");
    return unusable(`it cannot be read (${code})`, "Check who may read it, and the disk.");
  }
}

const sliceBytes = 65_536;

/** A file's bytes, also where it is a pipe that says no size; undefined where there are more than so many. */
function readAtMost(path: string, mostBytes: number): Uint8Array | undefined {
  const file = openSync(path, "r");
  try {
    const slices: Buffer[] = [];
    for (let total = 0; total <= mostBytes;) {
      const slice = Buffer.alloc(sliceBytes);
      const count = readSync(file, slice);
      if (count === 0) return Buffer.concat(slices);
      slices.push(slice.subarray(0, count));
      total += count;
    }
    return undefined;
  } finally {
    closeSync(file);
  }
}

/** The JSON files of a folder by name, schemas left out; none where there is no such folder. */
export function jsonFilesIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith(".json") && !name.endsWith(".schema.json"))
      .sort()
      .map((name) => join(folder, name));
  } catch {
    return [];
  }
}
