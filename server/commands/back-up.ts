import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { systemClock } from "../clock/system-clock.ts";
import { dataFolder, folders, logFile } from "../folders.ts";
import { backUp } from "../keeping/back-up.ts";
import { sentenceFor } from "../start-sentence.ts";
import { StoreError } from "../store/store-error.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/**
 * `back-up [folder]`: makes a back-up of this folder's bench, which may be at work, as one file in a folder such as a
 * stick; by default where the nightly ones go. Exit code 0 where it was made and proved, 1 where the records are damaged, 2
 * where it cannot be made.
 */
export async function run(args: string[]): Promise<number> {
  const to = args[0] ?? process.env["SPURWISE_BACKUP"];
  if (to === undefined || to === "") {
    say("Say where the back-up goes: npm run back-up -- /media/stick, or set SPURWISE_BACKUP.");
    return 2;
  }
  const { version: softwareVersion } = JSON.parse(readFileSync(folders.manifest, "utf8")) as {
    version: string;
  };
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  try {
    const wallMs = Math.round(systemClock().wallMs());
    const { file, manifest } = await backUp({ path, to: resolve(to), softwareVersion, wallMs });
    say(
      `Made ${file}: ${manifest.rowCount} records, proved. It holds what names are read with: keep it like the bench.`,
    );
    return 0;
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    say(`No back-up was made: ${sentenceFor(error) ?? error.message}`);
    return error.code === "damaged" ? 1 : 2;
  }
}
