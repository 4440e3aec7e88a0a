import { systemClock } from "../clock/system-clock.ts";
import { dataFolder, logFile } from "../folders.ts";
import { GuessGuard } from "../people/guess-guard.ts";
import { People } from "../people/people.ts";
import { toldSchema } from "../people/person.ts";
import { PinHasher } from "../people/pin-hash.ts";
import { withRecords } from "../with-records.ts";

const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);

/**
 * `let-in <name>`: the way back where every technician has forgotten their PIN, for whoever may write in the data folder
 * of this bench. The technician of that name gets a new PIN, which is said once; where there is none of that name, they
 * are put on the list. The log tells that it was done at the terminal. The bench must be stopped. Exit code 0, or 2 where
 * it cannot be done.
 */
export async function run(args: string[]): Promise<number> {
  const path = logFile(dataFolder(process.env["SPURWISE_DATA"]));
  const name = toldSchema.shape.name.safeParse(args.join(" "));
  if (!name.success) {
    say('Say who: npm run let-in -- "Ida Nowak"');
    return 2;
  }
  return withRecords(path, say, async ({ people: store, records }) => {
    const guard = new GuessGuard(() => systemClock().monotonicMs());
    const people = new People({ store, demo: [], pins: new PinHasher(), guard });
    const letIn = await people.list.letIn(name.data);
    if ("ok" in letIn) {
      say("The records of this bench are damaged: nobody can be let in before they are brought back.");
      return 2;
    }
    records.log.checkpoint();
    const what = letIn.isNew ? "is on the list now, a technician" : "has a new PIN";
    say(
      `${name.data} ${what}. PIN: ${letIn.pin}. It is not shown again; the log tells that it was made here.`,
    );
    return 0;
  });
}
