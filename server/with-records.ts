import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { EnvironmentError } from "./environment.ts";
import { openRecords } from "./open-records.ts";
import { sentenceFor } from "./start-sentence.ts";
import { holdFolder } from "./store/hold-folder.ts";
import { StoreError } from "./store/store-error.ts";

/**
 * Does something with the records of a bench that is stopped, for a command: the folder is held meanwhile, and all is
 * closed after it. Gives the exit code of `work`; 2, with the reason said, where there is no log or it cannot be opened.
 */
export async function withRecords(
  path: string,
  say: (sentence: string) => void,
  work: (opened: ReturnType<typeof openRecords>) => number | Promise<number>,
): Promise<number> {
  if (!existsSync(path)) {
    say(`There is no log at ${path}.`);
    return 2;
  }
  try {
    const letGo = holdFolder(dirname(path));
    try {
      const opened = openRecords(path, say);
      try {
        return await work(opened);
      } finally {
        opened.reading.close();
        opened.writing.close();
      }
    } finally {
      letGo();
    }
  } catch (error) {
    if (!(error instanceof StoreError || error instanceof EnvironmentError)) throw error;
    say(sentenceFor(error) ?? error.message);
    return 2;
  }
}
