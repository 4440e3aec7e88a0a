import { createHash } from "node:crypto";
import { readFileSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { z } from "zod";
import type { Connection } from "./open-database.ts";
import { readThrough } from "./read-through.ts";
import { hexOf } from "./row-hash.ts";
import { StoreError } from "./store-error.ts";
import { writeWhole } from "./write-whole.ts";

const anchorSchema = z.strictObject({
  benchId: z.string(),
  boot: z.number().int(),
  sequence: z.number().int(),
  /** How many records there were, the one named above the last of them. */
  rowCount: z.number().int(),
  /** Hash of that record, in hexadecimal. */
  head: z.string(),
});

/** How far a log had come, kept outside it, so that one that vanished, was shortened or was swapped is known. */
export type LogAnchor = z.infer<typeof anchorSchema>;

export const anchorFile = (logPath: string): string => `${logPath}.anchor.json`;

/** The anchor beside a log; undefined where there is none, or none that can be read. */
export const readAnchor = (logPath: string): LogAnchor | undefined => readAnchorFile(anchorFile(logPath));

/**
 * Where the anchor of a log lies in a folder elsewhere, such as on another disk, which stays when the data folder goes.
 * Logs of several folders do not get in each other's way there.
 */
export function anchorFileIn(folder: string, logPath: string): string {
  const mark = createHash("sha256").update(resolve(logPath)).digest("hex").slice(0, 12);
  return join(folder, `spurwise-${mark}.anchor.json`);
}

/** Every anchor of a log that can be read: beside it, and in a folder elsewhere where there is one. */
export const readAnchors = (logPath: string, elsewhere: string | undefined): LogAnchor[] =>
  [anchorFile(logPath), ...(elsewhere === undefined ? [] : [anchorFileIn(elsewhere, logPath)])]
    .map(readAnchorFile)
    .filter((anchor) => anchor !== undefined);

/** An anchor that was kept somewhere else; undefined where it is none. */
export function readAnchorFile(path: string): LogAnchor | undefined {
  try {
    return anchorSchema.safeParse(JSON.parse(readFileSync(path, "utf8"))).data;
  } catch {
    return undefined;
  }
}

/**
 * Keeps an anchor beside its log, whole or not at all, and on the disk when it returns.
 *
 * @throws a file system error; then the anchor of before still stands.
 */
export function keepAnchor(logPath: string, anchor: LogAnchor): void {
  writeWhole(anchorFile(logPath), textOf(anchor));
}

const textOf = (anchor: LogAnchor): string => `${JSON.stringify(anchor)}\n`;

/** Keeps it in a folder elsewhere as well; a stick that is not in, or is full, keeps nobody from working. */
export function keepAnchorIn(folder: string, logPath: string, anchor: LogAnchor): void {
  try {
    writeWhole(anchorFileIn(folder, logPath), textOf(anchor));
  } catch (error) {
    if (!(error instanceof Error && "syscall" in error)) throw error;
  }
}

/**
 * What speaks against a log by its anchor, in words; undefined where nothing does.
 *
 * @throws StoreError `damaged` where the log cannot be read.
 */
export function anchorFault(database: Connection, anchor: LogAnchor): string | undefined {
  const { benchId, boot, sequence, rowCount, head } = anchor;
  return readThrough(database, () => {
    const end = database
      .prepare<[string], { row_count: number }>("SELECT row_count FROM log_end WHERE bench_id = ?")
      .get(benchId);
    if (!end) return `it is not the log of bench ${benchId}, which stood here with ${rowCount} records`;
    if (end.row_count < rowCount) return `it had ${rowCount} records and has ${end.row_count} now`;
    const row = database
      .prepare<[string, number, number], { hash: Uint8Array }>(
        "SELECT hash FROM log WHERE bench_id = ? AND boot = ? AND sequence = ?",
      )
      .get(benchId, boot, sequence);
    return row && hexOf(row.hash) === head
      ? undefined
      : `its record ${rowCount} (boot ${boot}, event ${sequence}) is not the one that was written`;
  });
}

/**
 * Looks before a log is opened whether it is there at all, where an anchor says that it was.
 *
 * @throws StoreError `damaged` where it is gone or empty; nothing is made in its place.
 */
export function assertNotVanished(logPath: string, anchors: readonly LogAnchor[]): void {
  const [anchor] = anchors;
  if (anchor && !statSync(logPath, { throwIfNoEntry: false })?.size)
    throw new StoreError("damaged", {
      path: logPath,
      reason: `the log of ${anchor.rowCount} records is gone`,
    });
}
