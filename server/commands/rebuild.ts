import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { dataFolder, logFile } from "../folders.ts";
import { AttemptTable } from "../store/attempt-table.ts";
import { holdFolder } from "../store/hold-folder.ts";
import { openForWriting } from "../store/open-database.ts";
import { StoreError } from "../store/store-error.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/**
 * `rebuild [folder or file]`: makes the table of attempts anew from the log, by default of this folder's bench,
 * which must be stopped. Exit code 0 where it was made, 1 where the log is damaged, 2 where there is none or it is
 * in use.
 */
export async function run(args: string[]): Promise<number> {
  const path = args[0] ?? dataFolder(process.env["SPURWISE_DATA"]);
  const file = path.endsWith(".db") ? path : logFile(path);
  if (!existsSync(file)) {
    say(`There is no log at ${file}.`);
    return 2;
  }
  try {
    const letGo = holdFolder(dirname(file));
    try {
      const database = openForWriting(file);
      const count = new AttemptTable(database).rebuild();
      database.close();
      say(`The table of attempts was made anew from the log: ${count} attempts.`);
      return 0;
    } finally {
      letGo();
    }
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    if (error.code === "in-use") say(`The data folder ${dirname(file)} is in use. Stop the bench first.`);
    else if (error.code === "damaged")
      say(`The log ${file} is damaged. It was left as it is; npm run verify names the first bad record.`);
    else say(`The log ${file} cannot be opened: ${String(error.facts["reason"] ?? error.code)}.`);
    return error.code === "damaged" ? 1 : 2;
  }
}
