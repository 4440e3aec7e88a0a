import { readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { byBench } from "../../shared/protocol/author.ts";
import { systemClock } from "../clock/system-clock.ts";
import { faultLine } from "../files/csv.ts";
import { dataFolder, logFile } from "../folders.ts";
import { largestListBytes, readClassList } from "../people/class-list.ts";
import { GuessGuard } from "../people/guess-guard.ts";
import { People } from "../people/people.ts";
import { PinHasher } from "../people/pin-hash.ts";
import { withRecords } from "../with-records.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/** The bytes of a class list, no more than may be read; undefined where there is no such file. */
function bytesOf(file: string): Uint8Array | undefined {
  const size = statSync(file, { throwIfNoEntry: false })?.size;
  if (size === undefined) return undefined;
  return size > largestListBytes ? new Uint8Array(size) : readFileSync(file);
}

/** Says what stands against a list, line by line. */
function refused(faults: readonly Parameters<typeof faultLine>[0][]): number {
  faults.forEach((fault) => say(faultLine(fault)));
  say("Nobody was added.");
  return 1;
}

/**
 * `class-list [file.csv]`: puts the learners of a class list on the list of this folder's bench, all or none; without a
 * file it prints the list that is there. The bench must be stopped. Exit code 0, 1 where something stands against the
 * list, named line by line, 2 where the records or the file cannot be opened.
 */
export async function run(args: string[]): Promise<number> {
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  const file = args[0] === undefined ? undefined : resolve(process.env["INIT_CWD"] ?? "", args[0]);
  const bytes = file === undefined ? undefined : bytesOf(file);
  if (file !== undefined && !bytes) {
    say(`There is no file ${file}.`);
    return 2;
  }
  const list = bytes && readClassList(bytes);
  if (list && !list.ok) return refused(list.faults);
  return withRecords(path, say, async ({ people: store, records }) => {
    const clock = systemClock();
    const guard = new GuessGuard(() => clock.monotonicMs());
    const people = new People({ store, demo: [], pins: new PinHasher(), guard });
    if (!list) {
      process.stdout.write(people.list.classList());
      return 0;
    }
    const added = await people.list.addClass(list.learners, byBench);
    if ("faults" in added) return refused(added.faults);
    records.log.checkpoint();
    say(`${added.addedCount} learners were added.`);
    return 0;
  });
}
