import { existsSync } from "node:fs";
import { dataFolder, logFile } from "../folders.ts";
import { openForReading } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError } from "../store/store-error.ts";
import { verifyLog } from "../store/verify-log.ts";

const say = (sentence: string): void => {
  process.stdout.write(`${sentence}\n`);
};

/**
 * `verify [folder or file]`: checks the log of a bench, by default the one of this folder. Exit code 0 where
 * every record is as it was written, 1 where one is not (the first is named), 2 where there is no log to check.
 */
export async function run(args: string[]): Promise<number> {
  const path = args[0] ?? logFile(dataFolder(process.env["SPURWISE_DATA"]));
  const file = path.endsWith(".db") ? path : logFile(path);
  if (!existsSync(file)) {
    say(`There is no log at ${file}.`);
    return 2;
  }
  try {
    const database = openForReading(file);
    try {
      const damage = readThrough(database, () => database.pragma("quick_check(1)", { simple: true }));
      if (damage !== "ok") {
        say(`The log file is damaged: ${String(damage)}. It was left as it is; restore a back-up.`);
        return 1;
      }
      const check = verifyLog(database);
      if (check.isSound) {
        say(
          `The log is sound: ${check.rowCount} records and ${check.documentCount} documents, none changed.`,
        );
        return 0;
      }
      say(`The log was changed. First bad record: ${check.firstBadRecord}: ${check.reason}.`);
      return 1;
    } finally {
      database.close();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const { code, facts } = error;
    if (code === "damaged") {
      say(`The log file ${file} is damaged and cannot be read. It was left as it is; restore a back-up.`);
      return 1;
    }
    if (code === "newer-than-program")
      say(
        `The log ${file} was written by a newer version of Spurwise (${facts["found"]}, this one knows ${facts["known"]}). Update Spurwise.`,
      );
    else say(`The log ${file} cannot be opened: ${String(facts["reason"] ?? code)}.`);
    return 2;
  }
}
