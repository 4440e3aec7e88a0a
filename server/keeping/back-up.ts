import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { keepErased, readErased } from "../people/secrets.ts";
import { openForReading, openPlain, schemaVersion } from "../store/open-database.ts";
import { hexOf } from "../store/row-hash.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { verifyLog } from "../store/verify-log.ts";
import { fileModes, syncPath } from "../store/write-whole.ts";
import { type FileAlong, filesAlong, type Manifest, packInto } from "./back-up-file.ts";

const ending = ".backup";

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
}: BackUpParts): Promise<{ file: string; manifest: Manifest }> {
  const source = openForReading(path);
  const unfinished = join(to, `unfinished${ending}`);
  try {
    // The folder alone, none above it: where a stick is not in, nothing is made in its place.
    if (!existsSync(to)) mkdirSync(to, { mode: 0o700 });
    rmSync(unfinished, { force: true });
    // Made by the bench's own user for nobody else, before anything is in it.
    closeSync(openSync(unfinished, "wx", fileModes.secret));
    // All pages in one step: a copy that waits in between would have to begin anew after each append.
    await source.backup(unfinished, { progress: () => Number.MAX_SAFE_INTEGER });
    const { benchId, rowCount, head } = proved(unfinished, path);
    const told: Manifest = {
      format: 1,
      benchId,
      schemaVersion,
      softwareVersion,
      rowCount,
      head,
      madeWallMs: wallMs,
    };
    packInto(unfinished, told, filesOf(dirname(path)));
    const file = join(to, `spurwise-${stampOf(wallMs)}-${benchId.slice(-4)}${ending}`);
    syncPath(unfinished);
    renameSync(unfinished, file);
    syncPath(to);
    keepErased(to, readErased(dirname(path)));
    return { file, manifest: told };
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw toStoreError(error, path);
  } finally {
    source.close();
  }
}

/** Proves a copy as far as it can be proved, and gives how far its log has come. */
function proved(copy: string, path: string): Pick<Manifest, "benchId" | "rowCount" | "head"> {
  const database = openPlain(copy);
  try {
    const damage = database.pragma("quick_check(1)", { simple: true });
    const proof = verifyLog(database);
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
