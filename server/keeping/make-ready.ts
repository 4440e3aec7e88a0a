import { copyFileSync, mkdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { Clock } from "../clock/clock.ts";
import { PersonReader } from "../people/person-reader.ts";
import { PersonWriter } from "../people/person-writer.ts";
import { keepErased, PersonKeys, readErased } from "../people/secrets.ts";
import { LogWriter } from "../store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "../store/open-database.ts";
import { StoreError } from "../store/store-error.ts";
import { proveLog } from "../store/verify-log.ts";
import { fileModes } from "../store/write-whole.ts";
import { type Manifest, unpack } from "./back-up-file.ts";
import { isSealed, openSealed } from "./sealed-file.ts";

/** How far it has come. */
export interface RestoreStep {
  step: "copying" | "proving" | "placing";
  /** How many records are proved, of how many; 0 of the other steps. */
  doneCount: number;
  totalCount: number;
}

export interface ReadyParts {
  /** The back-up. */
  from: string;
  /** The log it is to take the place of. */
  path: string;
  clock: Clock;
  /** What it was sealed with, where it was. */
  passphrase?: string | undefined;
  /** Who brings it back. */
  author?: Author;
  /** Called with each step. */
  say: (step: RestoreStep) => void;
}

const sliceRowCount = 1000;

/** Where a back-up is made ready beside the log it takes the place of. */
export const besideOf = (path: string): string => join(dirname(path), "restoring");

/**
 * Makes a back-up ready beside the log it is to take the place of, whole and proved; older ones are brought up to date.
 * Whoever was erased since stays erased. What stands there is not touched, and the bench may be at work.
 *
 * @throws StoreError `damaged`, `wrong-passphrase`, `newer-than-program`, or a file system error.
 */
export function makeReady({ from, path, clock, passphrase, author = byBench, say }: ReadyParts): {
  manifest: Manifest;
  /** How many people were erased after it was made, and stay so. */
  erasedCount: number;
} {
  const beside = besideOf(path);
  rmSync(beside, { recursive: true, force: true });
  mkdirSync(beside, { recursive: true, mode: 0o700 });
  say({ step: "copying", doneCount: 0, totalCount: 0 });
  const copy = join(beside, "spurwise.db");
  if (!isSealed(from)) copyFileSync(from, copy);
  else if (passphrase === undefined) throw new StoreError("wrong-passphrase", { path: from });
  else openSealed(from, copy, statSync(from).size, passphrase);
  const { manifest, files } = unpack(copy);
  for (const [name, bytes] of files) writeFileSync(join(beside, name), bytes, { mode: fileModes.secret });
  const writing = openForWriting(copy);
  try {
    proveAll(writing, copy, (doneCount) =>
      say({ step: "proving", doneCount, totalCount: manifest.rowCount }),
    );
    const log = new LogWriter(writing, copy, clock);
    if (log.benchId !== manifest.benchId || log.rowCount !== manifest.rowCount)
      throw new StoreError("damaged", { path: copy, reason: "its manifest is of other records" });
    const erasedSince = [...erasedHere(path), ...readErased(dirname(from))];
    const erasedCount = eraseIn(copy, writing, log, erasedSince, clock);
    const { head, rowCount, madeWallMs } = manifest;
    const content = { head, rowCount, madeWallMs, erasedCount };
    log.append([{ attemptId: null, type: "restored", author, content }]);
    log.checkpoint();
    return { manifest, erasedCount };
  } finally {
    writing.close();
  }
}

function proveAll(database: Connection, path: string, done: (rowCount: number) => void): void {
  const proof = proveLog(database, sliceRowCount);
  for (;;) {
    const step = proof.next();
    if (!step.done) done(step.value);
    else if (step.value.isSound) return;
    else
      throw new StoreError("damaged", { path, reason: `${step.value.firstBadRecord}: ${step.value.reason}` });
  }
}

/** Who was erased on this bench, as far as its list or its records can be read. */
export function erasedHere(path: string): string[] {
  const folder = dirname(path);
  const listed = readErased(folder);
  try {
    const database = openForReading(path);
    try {
      return [...listed, ...new PersonReader(database, new PersonKeys(folder)).erased().map(({ id }) => id)];
    } finally {
      database.close();
    }
  } catch (error) {
    // What is brought back may be what replaces a damaged log: its list of erased people lies beside it as well.
    if (error instanceof StoreError) return listed;
    throw error;
  }
}

/** Erases in a copy who was erased since it was made; gives how many. */
function eraseIn(
  copy: string,
  writing: Connection,
  log: LogWriter,
  erasedSince: readonly string[],
  clock: Clock,
): number {
  const folder = dirname(copy);
  keepErased(folder, [...erasedSince]);
  const keys = new PersonKeys(folder);
  const reader = new PersonReader(writing, keys);
  // Who has no key in it was erased while it was made.
  const gone = [...new Set([...erasedSince, ...reader.keyless()])];
  const records = gone
    .map((id) => reader.record(id))
    .filter((record) => record !== undefined)
    .filter(({ erased_wall_ms }) => erased_wall_ms === null);
  if (records.length > 0)
    new PersonWriter({ database: writing, log, keys, wallMs: () => clock.wallMs() }).erase(records, byBench);
  keys.destroy(gone);
  return records.length;
}

/** Erases in what was made ready who was erased since; the bench may have gone on meanwhile. @throws StoreError */
export function eraseInReady(path: string, clock: Clock): number {
  const copy = join(besideOf(path), "spurwise.db");
  const writing = openForWriting(copy);
  try {
    const log = new LogWriter(writing, copy, clock);
    const count = eraseIn(copy, writing, log, erasedHere(path), clock);
    log.checkpoint();
    return count;
  } finally {
    writing.close();
  }
}
