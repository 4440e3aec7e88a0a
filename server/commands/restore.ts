import { existsSync, mkdirSync } from "node:fs";
import { dirname, resolve } from "node:path";
import { systemClock } from "../clock/system-clock.ts";
import { dataFolder, logFile } from "../folders.ts";
import type { RestoreStep } from "../keeping/make-ready.ts";
import { restore } from "../keeping/restore.ts";
import { sentenceFor } from "../start-sentence.ts";
import { holdFolder } from "../store/hold-folder.ts";
import { StoreError } from "../store/store-error.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);
const dryRun = "--dry-run";

const stepLine = ({ step, doneCount, totalCount }: RestoreStep): string =>
  step === "proving" ? `... proving, ${doneCount} of ${totalCount} records` : `... ${step}`;

/**
 * `restore <back-up> [--dry-run]`: brings a back-up back into this folder's bench, which must be stopped. What stood there
 * is moved aside and kept. Exit code 0 where it is there, or could be; 1 where the back-up is damaged; 2 where it cannot be
 * done. Then nothing has changed.
 */
export async function run(args: string[]): Promise<number> {
  const [from] = args.filter((arg) => arg !== dryRun);
  if (from === undefined || !existsSync(from)) {
    say(
      from === undefined ? "Say which back-up: npm run restore -- file.backup" : `There is no file ${from}.`,
    );
    return 2;
  }
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  const isDryRun = args.includes(dryRun);
  const anchorTo = process.env["SPURWISE_ANCHOR"] ?? process.env["SPURWISE_BACKUP"];
  const passphrase = process.env["SPURWISE_BACKUP_PASSPHRASE"];
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const letGo = holdFolder(dirname(path));
    try {
      const parts = { from: resolve(from), path, clock: systemClock(), isDryRun, passphrase, anchorTo };
      const { manifest, erasedCount, replaced } = restore({ ...parts, say: (step) => say(stepLine(step)) });
      const when = new Date(manifest.madeWallMs).toISOString();
      const erased = erasedCount > 0 ? ` ${erasedCount} people erased since stay erased.` : "";
      say(
        isDryRun
          ? `It can be brought back: ${manifest.rowCount} records of ${when}.${erased} Nothing was changed.`
          : `Brought back: ${manifest.rowCount} records of ${when}.${erased}${replaced ? ` What was there before: ${replaced}` : ""}`,
      );
      return 0;
    } finally {
      letGo();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const reason =
      error.code === "damaged" ? `${from}: ${String(error.facts["reason"])}` : sentenceFor(error);
    say(`Nothing was changed: ${reason ?? error.message}`);
    return error.code === "damaged" ? 1 : 2;
  }
}
