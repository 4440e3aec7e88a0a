import { readFileSync, statSync } from "node:fs";

const dayMs = 24 * 3_600_000;
/** A sector of these figures has 512 bytes, whatever the disk's own have (Linux, Documentation/admin-guide/iostats). */
const sectorBytes = 512;
const writtenSectorsAt = 9;
const minorBits = 8;

/** So much a day, at the pace of what was written in a time; null for too short a time to tell. */
export const aDay = (bytes: number | null, spentMs: number, leastMs = 60_000): number | null =>
  bytes === null || spentMs < leastMs ? null : Math.round((bytes * dayMs) / spentMs);

/** What a process wrote, by /proc/<pid>/io; null where that is not said. */
export function processWrites(text: string): number | null {
  const [, bytes] = /^write_bytes: (\d+)$/m.exec(text) ?? [];
  return bytes === undefined ? null : Number(bytes);
}

/** What was written to a disk since the start, by its major and minor number and /proc/diskstats; null for another. */
export function diskWrites(text: string, major: number, minor: number): number | null {
  for (const line of text.split("\n")) {
    const cells = line.trim().split(/\s+/);
    if (Number(cells[0]) === major && Number(cells[1]) === minor)
      return Number(cells[writtenSectorsAt]) * sectorBytes;
  }
  return null;
}

const textOf = (path: string): string => {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
};

/** What this program wrote since its start, in bytes. */
export const readProcessWrites = (): number | null => processWrites(textOf("/proc/self/io"));

/** What was written to the disk that a folder lies on. */
export function readDiskWrites(folder: string): number | null {
  const { dev } = statSync(folder);
  return diskWrites(textOf("/proc/diskstats"), dev >> minorBits, dev % 2 ** minorBits);
}
