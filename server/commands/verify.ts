import { copyFileSync, createReadStream, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join, resolve } from "node:path";
import { createInterface } from "node:readline";
import { verifyArchive } from "../evidence/verify-archive.ts";
import { dataFolder, logFile } from "../folders.ts";
import { anchorFault, type LogAnchor, readAnchorFile, readAnchors } from "../store/log-anchor.ts";
import { readPublicKey, shortKey } from "../store/log-signer.ts";
import { type Connection, openForReading } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError } from "../store/store-error.ts";
import { verifyLog } from "../store/verify-log.ts";

const anchorOption = "--anchor";

/** Where the bench keeps its anchor beside its data folder. */
const anchorFolder = (): string | undefined =>
  process.env["SPURWISE_ANCHOR"] ?? process.env["SPURWISE_BACKUP"];

const say = (sentence: string): void => {
  process.stdout.write(`${sentence}\n`);
};

/** Opens a log for reading; one that lies on a medium that takes no file beside it is read from a copy. */
function openAnywhere(file: string): { database: Connection; remove: () => void } {
  try {
    return { database: openForReading(file), remove: () => undefined };
  } catch (error) {
    if (!(error instanceof StoreError) || error.code !== "read-only") throw error;
    const folder = mkdtempSync(join(tmpdir(), "spurwise-verify-"));
    const remove = (): void => rmSync(folder, { recursive: true, force: true });
    try {
      const copy = join(folder, basename(file));
      copyFileSync(file, copy);
      if (existsSync(`${file}-wal`)) copyFileSync(`${file}-wal`, `${copy}-wal`);
      return { database: openForReading(copy), remove };
    } catch (again) {
      remove();
      throw again;
    }
  }
}

/** What is wrong with an opened log, in a sentence; undefined where nothing is. */
function faultOf(database: Connection, file: string, kept: LogAnchor | undefined): string | undefined {
  const damage = readThrough(database, () => database.pragma("quick_check(1)", { simple: true }));
  if (damage !== "ok")
    return `The log file is damaged: ${String(damage)}. It was left as it is; restore a back-up.`;
  const proof = verifyLog(database);
  if (!proof.isSound)
    return `The log was changed. First bad record: ${proof.firstBadRecord}: ${proof.reason}.`;
  const fault = [...readAnchors(file, anchorFolder()), kept]
    .map((anchor) => anchor && anchorFault(database, anchor))
    .find((found) => found !== undefined);
  if (fault) return `The log is not what was written: ${fault}. Restore a back-up.`;
  const own = readPublicKey(dirname(file));
  if (proof.publicKey !== undefined && own !== undefined && own !== proof.publicKey)
    return `The log was sealed with another key (${shortKey(proof.publicKey)}) than this bench's (${shortKey(own)}).`;
  say(`The log is sound: ${proof.rowCount} records and ${proof.documentCount} documents, none changed.`);
  return undefined;
}

function sentenceFor({ code, facts }: StoreError, file: string): string {
  if (code === "damaged")
    return `The log file ${file} is damaged and cannot be read. It was left as it is; restore a back-up.`;
  if (code === "newer-than-program")
    return `The log ${file} was written by a newer version of Spurwise (${facts["found"]}, this one knows ${facts["known"]}). Update Spurwise.`;
  return `The log ${file} cannot be opened: ${String(facts["reason"] ?? code)}.`;
}

const archiveEnding = ".jsonl";

/** Checks an archive of a whole bench, as it is saved at the desk. */
async function verifyArchiveFile(asked: string): Promise<number> {
  // npm runs a command in the project's folder; whoever called it named the file from where they stood.
  const file = resolve(process.env["INIT_CWD"] ?? "", asked);
  if (!existsSync(file)) {
    say(`There is no archive at ${file}.`);
    return 2;
  }
  const proof = await verifyArchive(createInterface({ input: createReadStream(file), crlfDelay: Infinity }));
  say(
    proof.isSound
      ? `The archive is sound: ${proof.rowCount} records and ${proof.documentCount} documents, none changed.`
      : `The archive was changed. First: ${proof.firstBad}: ${proof.reason}.`,
  );
  return proof.isSound ? 0 : 1;
}

/**
 * `verify [folder or file] [--anchor file]`: checks the log of a bench, by default the one of this folder, or the archive
 * that a file ending on .jsonl is. Exit code 0 where
 * every record is as it was written, 1 where one is not (the first is named) or where the log is not as far as it had
 * come, 2 where there is no log to check.
 */
export async function run(args: string[]): Promise<number> {
  const at = args.indexOf(anchorOption);
  const anchorPath = at < 0 ? undefined : args[at + 1];
  const kept = anchorPath === undefined ? undefined : readAnchorFile(anchorPath);
  if (at >= 0 && !kept) {
    say(`${anchorPath ?? anchorOption} is no anchor. A bench gives its own at /anchor.json.`);
    return 2;
  }
  const [asked] = args.filter((_, index) => at < 0 || index < at || index > at + 1);
  if (asked?.endsWith(archiveEnding)) return verifyArchiveFile(asked);
  const path = asked ?? logFile(dataFolder(process.env["SPURWISE_DATA"]));
  const file = path.endsWith(".db") ? path : logFile(path);
  if (!existsSync(file)) {
    const [anchor] = readAnchors(file, anchorFolder());
    say(`There is no log at ${file}${anchor ? `, and there was one of ${anchor.rowCount} records` : ""}.`);
    return anchor ? 1 : 2;
  }
  try {
    const { database, remove } = openAnywhere(file);
    try {
      const fault = faultOf(database, file, kept);
      if (fault) say(fault);
      return fault ? 1 : 0;
    } finally {
      database.close();
      remove();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    say(sentenceFor(error, file));
    return error.code === "damaged" ? 1 : 2;
  }
}
