import { existsSync } from "node:fs";
import { dirname } from "node:path";
import { byBench } from "../../shared/protocol/author.ts";
import { systemClock } from "../clock/system-clock.ts";
import { EnvironmentError, readEnvironment } from "../environment.ts";
import { dataFolder, logFile } from "../folders.ts";
import { dueLearners } from "../keeping/due.ts";
import { openRecords } from "../open-records.ts";
import { sentenceFor } from "../start-sentence.ts";
import { holdFolder } from "../store/hold-folder.ts";
import { StoreError } from "../store/store-error.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);
const dayOf = (wallMs: number): string => new Date(wallMs).toISOString().slice(0, 10);

/**
 * `due [--erase]`: lists the learners who did nothing on this folder's bench for longer than the centre keeps them
 * (`SPURWISE_KEEP_YEARS`, 3), those on hold left out; `--erase` takes their names, numbers and badges away for good. The
 * bench must be stopped. Exit code 0, or 2 where the records cannot be opened.
 */
export async function run(args: string[]): Promise<number> {
  try {
    const { keepYears, data } = readEnvironment(process.env);
    const path = logFile(dataFolder(data));
    if (!existsSync(path)) {
      say(`There is no log at ${path}.`);
      return 2;
    }
    const letGo = holdFolder(dirname(path));
    try {
      const { people, records, reading, writing } = openRecords(path, say);
      try {
        if (!people) return 2;
        const { reader, writer } = people;
        const due = dueLearners(reader, reading, keepYears, systemClock().wallMs());
        for (const { id, name, lastWallMs } of due) say(`${dayOf(lastWallMs)}  ${name}  ${id}`);
        say(`${due.length} learners have not been here for more than ${keepYears} years.`);
        if (!args.includes("--erase")) return 0;
        writer.erase(
          due.map(({ id }) => reader.record(id)).filter((record) => record !== undefined),
          byBench,
        );
        records.log.checkpoint();
        say(`${due.length} were erased.`);
        return 0;
      } finally {
        reading.close();
        writing.close();
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
