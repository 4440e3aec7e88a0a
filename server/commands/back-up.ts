import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { systemClock } from "../clock/system-clock.ts";
import { dataFolder, folders, logFile } from "../folders.ts";
import { backUp, type BackUpStep } from "../keeping/back-up.ts";
import { sentenceFor } from "../start-sentence.ts";
import { StoreError } from "../store/store-error.ts";

const leastLetters = 12;
const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

const withoutPassphrase = "--without-passphrase";
const passphraseName = "SPURWISE_BACKUP_PASSPHRASE";

const stepLine = ({ step, doneCount }: BackUpStep): string =>
  doneCount > 0 && step === "proving" ? `... proving, ${doneCount} records so far` : `... ${step}`;

/**
 * `back-up [folder] [--without-passphrase]`: makes a back-up of this folder's bench, which may be at work, as one file in a folder such as a
 * stick; by default where the nightly ones go. Exit code 0 where it was made and proved, 1 where the records are damaged, 2
 * where it cannot be made.
 */
export async function run(args: string[]): Promise<number> {
  const to = args.find((arg) => arg !== withoutPassphrase) ?? process.env["SPURWISE_BACKUP"];
  if (to === undefined || to === "") {
    say("Say where the back-up goes: npm run back-up -- /media/stick, or set SPURWISE_BACKUP.");
    return 2;
  }
  const passphrase = args.includes(withoutPassphrase) ? undefined : process.env[passphraseName];
  if (!args.includes(withoutPassphrase) && (passphrase === undefined || passphrase.length < leastLetters)) {
    say(
      `A back-up holds names and what they are read with. Set ${passphraseName} to ${leastLetters} letters or more that it is sealed with, or say ${withoutPassphrase}.`,
    );
    return 2;
  }
  const { version: softwareVersion } = JSON.parse(readFileSync(folders.manifest, "utf8")) as {
    version: string;
  };
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  try {
    const wallMs = Math.round(systemClock().wallMs());
    const { file, manifest } = await backUp({
      path,
      to: resolve(to),
      softwareVersion,
      wallMs,
      passphrase,
      say: (step) => say(stepLine(step)),
    });
    say(
      `Made ${file}: ${manifest.rowCount} records, proved. ${
        passphrase === undefined
          ? "It holds what names are read with: keep it like the bench."
          : "It is sealed: without its passphrase nobody can bring it back."
      }`,
    );
    return 0;
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    say(`No back-up was made: ${sentenceFor(error) ?? error.message}`);
    return error.code === "damaged" ? 1 : 2;
  }
}
