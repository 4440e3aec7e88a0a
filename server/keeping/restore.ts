import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { byBench } from "../../shared/protocol/author.ts";
import type { Clock } from "../clock/clock.ts";
import { PersonReader } from "../people/person-reader.ts";
import { PersonWriter } from "../people/person-writer.ts";
import { keepErased, PersonKeys, readErased } from "../people/secrets.ts";
import { anchorFile, keepAnchorIn, readAnchor } from "../store/log-anchor.ts";
import { LogWriter } from "../store/log-writer.ts";
import { openForReading, openForWriting } from "../store/open-database.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { verifyLog } from "../store/verify-log.ts";
import { fileModes, syncPath } from "../store/write-whole.ts";
import { isSealed, openSealed } from "./sealed-file.ts";
import { filesAlong, type Manifest, unpack } from "./back-up-file.ts";

interface RestoreParts {
  /** The back-up. */
  from: string;
  /** The log it takes the place of; the bench is stopped. */
  path: string;
  clock: Clock;
  /** Everything is made and proved, and then taken away again. */
  isDryRun: boolean;
  /** What it was sealed with, where it was. */
  passphrase?: string | undefined;
  /** Where the bench keeps its anchor beside its data folder. */
  anchorTo?: string | undefined;
  /** Called with each step. */
  say: (step: string) => void;
}

export interface Restored {
  manifest: Manifest;
  /** How many people were erased after it was made, and stay so. */
  erasedCount: number;
  /** Where what stood there before lies; undefined where nothing did, and in a dry run. */
  replaced: string | undefined;
}

/**
 * Brings a back-up back. It is made whole and proved beside what stands there, which is only then moved aside: it is
 * kept. Older back-ups are brought up to date, those of a later version are refused. Whoever was erased since stays
 * erased.
 *
 * @throws StoreError `damaged`, `wrong-passphrase`, `newer-than-program` and what a disk gives; then everything is as before.
 */
export function restore({ from, path, clock, isDryRun, passphrase, anchorTo, say }: RestoreParts): Restored {
  const folder = dirname(path);
  const beside = join(folder, "restoring");
  rmSync(beside, { recursive: true, force: true });
  try {
    mkdirSync(beside, { recursive: true, mode: 0o700 });
    say("copying");
    const copy = join(beside, "spurwise.db");
    if (!isSealed(from)) copyFileSync(from, copy);
    else if (passphrase === undefined) throw new StoreError("wrong-passphrase", { path: from });
    else openSealed(from, copy, statSync(from).size, passphrase);
    const { manifest, files } = unpack(copy);
    for (const [name, bytes] of files) writeFileSync(join(beside, name), bytes, { mode: fileModes.secret });
    say(`proving ${manifest.rowCount} records`);
    const erasedCount = bringUpToDate(
      copy,
      [...erasedHere(path), ...readErased(dirname(from))],
      manifest,
      clock,
    );
    if (isDryRun) return { manifest, erasedCount, replaced: undefined };
    say("putting it in place");
    const replaced = putInPlace(folder, beside, clock);
    // The one elsewhere is of what stood here: the bench would take what was brought back for a log that was shortened.
    const anchor = readAnchor(path);
    if (anchor && anchorTo !== undefined) keepAnchorIn(anchorTo, path, anchor);
    return { manifest, erasedCount, replaced };
  } catch (error) {
    throw toStoreError(error, from);
  } finally {
    rmSync(beside, { recursive: true, force: true });
  }
}

/** Who was erased on this bench, as far as its list or its records can be read. */
function erasedHere(path: string): string[] {
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

/** Migrates and proves a copy, and erases in it who was erased since; gives how many. */
function bringUpToDate(copy: string, erasedSince: string[], manifest: Manifest, clock: Clock): number {
  const folder = dirname(copy);
  const writing = openForWriting(copy);
  try {
    const proof = verifyLog(writing);
    if (!proof.isSound)
      throw new StoreError("damaged", { path: copy, reason: `${proof.firstBadRecord}: ${proof.reason}` });
    const log = new LogWriter(writing, copy, clock);
    if (log.benchId !== manifest.benchId || log.rowCount !== manifest.rowCount)
      throw new StoreError("damaged", { path: copy, reason: "its manifest is of other records" });
    keepErased(folder, erasedSince);
    const keys = new PersonKeys(folder);
    const reader = new PersonReader(writing, keys);
    // Who has no key in it was erased while it was made.
    const gone = [...new Set([...erasedSince, ...reader.keyless()])];
    const records = gone
      .map((id) => reader.record(id))
      .filter((record) => record !== undefined)
      .filter(({ erased_wall_ms }) => erased_wall_ms === null);
    new PersonWriter({ database: writing, log, keys, wallMs: () => clock.wallMs() }).erase(records, byBench);
    keys.destroy(gone);
    const { head, rowCount, madeWallMs } = manifest;
    const content = { head, rowCount, madeWallMs, erasedCount: records.length };
    log.append([{ attemptId: null, type: "restored", author: byBench, content }]);
    log.checkpoint();
    return records.length;
  } finally {
    writing.close();
  }
}

const oneLog = (folder: string): string[] => {
  const log = join(folder, "spurwise.db");
  return [anchorFile(log), log, `${log}-wal`, `${log}-shm`, ...filesAlong.map((name) => join(folder, name))];
};

/** Moves what stands in a folder aside and what was made into its place; gives where the old lies. */
function putInPlace(folder: string, beside: string, clock: Clock): string | undefined {
  const old = oneLog(folder).filter((path) => existsSync(path));
  const stamp = new Date(clock.wallMs()).toISOString().replace(/[:.]/g, "-");
  const aside = join(folder, `replaced-${stamp}`);
  if (old.length > 0) mkdirSync(aside, { mode: 0o700 });
  for (const path of old) renameSync(path, join(aside, nameIn(folder, path)));
  for (const path of oneLog(beside).reverse())
    if (existsSync(path)) renameSync(path, join(folder, nameIn(beside, path)));
  syncPath(folder);
  return old.length > 0 ? aside : undefined;
}

const nameIn = (folder: string, path: string): string => path.slice(folder.length + 1);
