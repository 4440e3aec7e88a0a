import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { keepErased, readErased } from "../people/secrets.ts";
import { type Connection, openForReading, openPlain, schemaVersion } from "../store/open-database.ts";
import { hexOf } from "../store/row-hash.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { type LogProof, proveLog } from "../store/verify-log.ts";
import { fileModes, syncPath } from "../store/write-whole.ts";
import { sealFile } from "./sealed-file.ts";
import { type FileAlong, filesAlong, type Manifest, packInto } from "./back-up-file.ts";

const ending = ".backup";
const sliceRowCount = 1000;

/** What a back-up is called in a folder while it is made. */
export const unfinishedIn = (folder: string): string => join(folder, `unfinished${ending}`);

/** The back-ups in a folder, the newest first; by their names, which begin with the time they were made. */
export const backUpsIn = (folder: string): string[] =>
  existsSync(folder)
    ? readdirSync(folder)
        .filter((name) => /^spurwise-[\d-]+-\w+\.backup$/.test(name))
        .sort()
        .reverse()
    : [];

interface BackUpParts {
  /** The file of the log; the bench may be at work. */
  path: string;
  /** The folder the back-up goes into; made where it is not there. */
  to: string;
  softwareVersion: string;
  wallMs: number;
  /** What it is sealed with; undefined: it is not sealed. */
  passphrase?: string | undefined;
  /** Called as it goes on. */
  say?: (step: BackUpStep) => void;
}

/** How far a back-up has come. */
export interface BackUpStep {
  step: "copying" | "proving" | "sealing";
  /** How many records are proved; 0 before and of the other steps. */
  doneCount: number;
  /** How many there are; 0 where that is not known yet. */
  totalCount: number;
}

/** As 20261126-224500: names in the order of time. */
const stampOf = (wallMs: number): string =>
  new Date(wallMs).toISOString().replace(/[-:]/g, "").replace("T", "-").slice(0, 15);

/**
 * Makes a back-up, one file, of the records as they are at one moment. It is proved before it has its name: what is
 * there under that name can be brought back. It holds the keys of names, and so must be kept like the bench itself.
 *
 * @throws StoreError `damaged` where the records are not sound, and what a disk gives that takes nothing.
 */
export async function backUp({
  path,
  to,
  softwareVersion,
  wallMs,
  passphrase,
  say = () => undefined,
}: BackUpParts): Promise<{ file: string; manifest: Manifest }> {
  const source = openForReading(path);
  const unfinished = unfinishedIn(to);
  // What is to be sealed does not lie on a stick as it is, not for a moment.
  const plain = passphrase === undefined ? unfinished : unfinishedIn(dirname(path));
  try {
    // The folder alone, none above it: where a stick is not in, nothing is made in its place.
    if (!existsSync(to)) mkdirSync(to, { mode: 0o700 });
    for (const one of new Set([plain, unfinished])) rmSync(one, { force: true });
    say({ step: "copying", doneCount: 0, totalCount: 0 });
    // Made by the bench's own user for nobody else, before anything is in it.
    closeSync(openSync(plain, "wx", fileModes.secret));
    // All pages in one step: a copy that waits in between would have to begin anew after each append.
    await source.backup(plain, { progress: () => Number.MAX_SAFE_INTEGER });
    const { benchId, rowCount, head } = proved(plain, path, (doneCount, totalCount) =>
      say({ step: "proving", doneCount, totalCount }),
    );
    const told: Manifest = {
      format: 1,
      benchId,
      schemaVersion,
      softwareVersion,
      rowCount,
      head,
      madeWallMs: wallMs,
    };
    packInto(plain, told, filesOf(dirname(path)));
    if (passphrase !== undefined) {
      say({ step: "sealing", doneCount: rowCount, totalCount: rowCount });
      sealFile(plain, unfinished, statSync(plain).size, passphrase);
      rmSync(plain, { force: true });
    }
    const file = join(to, `spurwise-${stampOf(wallMs)}-${benchId.slice(-4)}${ending}`);
    syncPath(unfinished);
    renameSync(unfinished, file);
    syncPath(to);
    keepErased(to, readErased(dirname(path)));
    return { file, manifest: told };
  } catch (error) {
    for (const one of new Set([plain, unfinished])) rmSync(one, { force: true });
    throw toStoreError(error, path);
  } finally {
    source.close();
  }
}

/** Proves a copy as far as it can be proved, and gives how far its log has come. */
function proved(
  copy: string,
  path: string,
  done: (rowCount: number, totalCount: number) => void,
): Pick<Manifest, "benchId" | "rowCount" | "head"> {
  const database = openPlain(copy);
  try {
    const damage = database.pragma("quick_check(1)", { simple: true });
    const totalCount = rowCountOf(database);
    const proof = proofOf(database, (doneCount) => done(doneCount, totalCount));
    if (damage !== "ok") throw new StoreError("damaged", { path, reason: String(damage) });
    if (!proof.isSound)
      throw new StoreError("damaged", { path, reason: `${proof.firstBadRecord}: ${proof.reason}` });
    const end = database
      .prepare<[], { bench_id: string; row_count: number; hash: Uint8Array }>(
        "SELECT bench_id, row_count, hash FROM log_end JOIN bench USING (bench_id)",
      )
      .get();
    if (!end) throw new StoreError("damaged", { path, reason: "it has no record" });
    return { benchId: end.bench_id, rowCount: end.row_count, head: hexOf(end.hash) };
  } finally {
    database.close();
  }
}

/** How many records a copy says that it has. */
const rowCountOf = (database: Connection): number =>
  database.prepare<[], number>("SELECT coalesce(sum(row_count), 0) FROM log_end").pluck().get() ?? 0;

function proofOf(database: Connection, done: (rowCount: number) => void): LogProof {
  const proof = proveLog(database, sliceRowCount);
  for (;;) {
    const step = proof.next();
    if (step.done) return step.value;
    done(step.value);
  }
}

const filesOf = (folder: string): Map<FileAlong, Uint8Array> =>
  new Map(
    filesAlong
      .filter((name) => existsSync(join(folder, name)))
      .map((name) => [name, readFileSync(join(folder, name))]),
  );

/** Takes old back-ups of a folder away, all but the newest. */
export function keepNewest(folder: string, count: number): void {
  for (const name of backUpsIn(folder).slice(count)) rmSync(join(folder, name), { force: true });
}
