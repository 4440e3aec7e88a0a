import { byBench } from "../../shared/protocol/author.ts";
import { systemClock } from "../clock/system-clock.ts";
import { readEnvironment } from "../environment.ts";
import { dataFolder, logFile } from "../folders.ts";
import { dueLearners } from "../keeping/due.ts";
import { withRecords } from "../with-records.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);
const dayOf = (wallMs: number): string => new Date(wallMs).toISOString().slice(0, 10);

/**
 * `due [--erase]`: lists the learners who did nothing on this folder's bench for longer than the centre keeps them
 * (`SPURWISE_KEEP_YEARS`, 3), those on hold left out; `--erase` takes their names, numbers and badges away for good. The
 * bench must be stopped. Exit code 0, or 2 where the records cannot be opened.
 */
export async function run(args: string[]): Promise<number> {
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  return withRecords(path, say, ({ people, records, reading }) => {
    const { keepYears } = readEnvironment(process.env);
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
  });
}
