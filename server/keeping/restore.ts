import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Clock } from "../clock/clock.ts";
import { anchorFile, keepAnchorIn, readAnchor } from "../store/log-anchor.ts";
import { type StoreError, toStoreError } from "../store/store-error.ts";
import { syncPath, writeWhole } from "../store/write-whole.ts";
import { filesAlong, type Manifest } from "./back-up-file.ts";
import { besideOf, eraseInReady, makeReady, type ReadyParts } from "./make-ready.ts";

interface RestoreParts extends ReadyParts {
  /** Everything is made and proved, and then taken away again. */
  isDryRun: boolean;
  /** Where the bench keeps its anchor beside its data folder. */
  anchorTo?: string | undefined;
}

export interface Restored {
  manifest: Manifest;
  /** How many people were erased after it was made, and stay so. */
  erasedCount: number;
  /** Where what stood there before lies; undefined where nothing did, and in a dry run. */
  replaced: string | undefined;
}

/**
 * Brings a back-up back; the bench is stopped. It is made whole and proved beside what stands there, which is only then
 * moved aside: it is kept. Older back-ups are brought up to date, those of a later version are refused. Whoever was
 * erased since stays erased.
 *
 * @throws StoreError `damaged`, `wrong-passphrase`, `newer-than-program` and what a disk gives; then everything is as before.
 */
export function restore({ isDryRun, anchorTo, ...parts }: RestoreParts): Restored {
  const { from, path, clock, say } = parts;
  try {
    const ready = makeReady(parts);
    if (isDryRun) return { ...ready, replaced: undefined };
    say({ step: "placing", doneCount: 0, totalCount: 0 });
    return { ...ready, replaced: putInPlace(path, clock, anchorTo) };
  } catch (error) {
    throw toStoreError(error, from);
  } finally {
    rmSync(besideOf(path), { recursive: true, force: true });
  }
}

const wantedFile = "wanted";
const wantedIn = (path: string): string => join(besideOf(path), wantedFile);

/** What was made ready is to take its place at the next start. @throws a file system error. */
export const wantAtStart = (path: string): void => writeWhole(wantedIn(path), "");

/**
 * At a start, before the records are opened: puts in place what was made ready and is wanted, also where a start before
 * ended in the middle of it. Gives where what stood there before lies, or why it was not done and all is as before;
 * undefined where nothing is wanted.
 *
 * @throws StoreError where it ended in the middle; the next start goes on with it.
 */
export function restoreWanted(
  path: string,
  clock: Clock,
  anchorTo: string | undefined,
): { replaced: string | undefined } | { error: StoreError } | undefined {
  const beside = besideOf(path);
  if (!existsSync(wantedIn(path))) {
    // It was stopped or the power went while it was made ready.
    rmSync(beside, { recursive: true, force: true });
    return undefined;
  }
  try {
    if (!existsSync(placingIn(path))) eraseInReady(path, clock);
    const replaced = putInPlace(path, clock, anchorTo);
    rmSync(beside, { recursive: true, force: true });
    return { replaced };
  } catch (error) {
    const storeError = toStoreError(error, path);
    if (existsSync(placingIn(path))) throw storeError;
    rmSync(beside, { recursive: true, force: true });
    return { error: storeError };
  }
}

const oneLog = (folder: string): string[] => {
  const log = join(folder, "spurwise.db");
  return [anchorFile(log), log, `${log}-wal`, `${log}-shm`, ...filesAlong.map((name) => join(folder, name))];
};

/** There once all that stood before is aside: what is in place from then on was brought back. */
const placingIn = (path: string): string => join(besideOf(path), "placing");

/** Moves what stands in a folder aside and what was made into its place; gives where the old lies. */
function putInPlace(path: string, clock: Clock, anchorTo: string | undefined): string | undefined {
  const folder = dirname(path);
  const beside = besideOf(path);
  const replaced = existsSync(placingIn(path)) ? undefined : moveAside(folder, clock);
  writeWhole(placingIn(path), "");
  for (const made of oneLog(beside).reverse())
    if (existsSync(made)) renameSync(made, join(folder, nameIn(beside, made)));
  syncPath(folder);
  // The one elsewhere is of what stood here: the bench would take what was brought back for a log that was shortened.
  const anchor = readAnchor(path);
  if (anchor && anchorTo !== undefined) keepAnchorIn(anchorTo, path, anchor);
  return replaced;
}

function moveAside(folder: string, clock: Clock): string | undefined {
  const old = oneLog(folder).filter((path) => existsSync(path));
  if (old.length === 0) return undefined;
  const stamp = new Date(clock.wallMs()).toISOString().replace(/[:.]/g, "-");
  const aside = join(folder, `replaced-${stamp}`);
  mkdirSync(aside, { mode: 0o700 });
  for (const path of old) renameSync(path, join(aside, nameIn(folder, path)));
  return aside;
}

const nameIn = (folder: string, path: string): string => path.slice(folder.length + 1);
