import { readFileSync } from "node:fs";
import { join } from "node:path";
import { systemClock } from "../clock/system-clock.ts";
import { logFile } from "../folders.ts";
import { isNewer } from "./update-manifest.ts";
import { beforeIn, mainOf, type ProgramChoice, readChoice, writeChoice } from "./programs.ts";

/** A program on trial that ended so often before it was healthy is not started again. */
const mostStarts = 3;

/**
 * The path of the program that is to be started out of those in a data folder; undefined for the one that was installed,
 * also where that is newer by now. One on trial that was not healthy gives way to the one before, and where it had
 * changed the form of the records they are brought back as they were; what stood there is kept beside them.
 *
 * @throws StoreError or a file system error where the records cannot be brought back.
 */
export async function programToStart(
  data: string,
  installed: string,
  note: (sentence: string) => void,
): Promise<string | undefined> {
  const choice = readChoice(data);
  if (!choice || !isNewer(choice.current, installed)) return undefined;
  const { current, trial } = choice;
  const main = mainOf(data, current);
  if (main !== undefined && (!trial || (!trial.isFailed && trial.startCount < mostStarts))) {
    if (trial) writeChoice(data, { ...choice, trial: { ...trial, startCount: trial.startCount + 1 } });
    return main;
  }
  note(`the program ${current} was not healthy: the one before is started again`);
  await bringRecordsBack(data, choice, note);
  const { previous } = choice;
  const before = previous === null ? undefined : mainOf(data, previous);
  writeChoice(
    data,
    previous !== null && before !== undefined
      ? { current: previous, previous: null, trial: null }
      : undefined,
  );
  return before;
}

async function bringRecordsBack(
  data: string,
  { trial }: ProgramChoice,
  note: (sentence: string) => void,
): Promise<void> {
  const path = logFile(data);
  if (!trial || (await schemaOf(path)) === trial.schemaVersion) return;
  // Loaded on the way back alone: a start is spared them.
  const { backUpsIn } = await import("../keeping/back-up.ts");
  const { restore } = await import("../keeping/restore.ts");
  const folder = beforeIn(data);
  const [name] = backUpsIn(folder);
  if (name === undefined) return note("there is no back-up of the records from before the update");
  const from = join(folder, name);
  const { replaced } = restore({ from, path, clock: systemClock(), isDryRun: false, say: () => undefined });
  note(`the records are as they were before the update; what it wrote is kept in ${replaced ?? "no folder"}`);
}

/** The form of the records, by the mark in their file; undefined where that cannot be read. */
async function schemaOf(path: string): Promise<number | undefined> {
  try {
    const { default: Database } = await import("better-sqlite3");
    const database = new Database(path, { readonly: true, fileMustExist: true });
    try {
      return Number(database.pragma("user_version", { simple: true }));
    } finally {
      database.close();
    }
  } catch {
    return undefined;
  }
}

/** The version of a program by the folder it lies in. */
export const versionIn = (folder: string): string =>
  (JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as { version: string }).version;
