import { mkdirSync } from "node:fs";
import type { Clock } from "./clock/clock.ts";
import { logFile } from "./folders.ts";
import { restoreWanted } from "./keeping/restore.ts";
import { type OpenedRecords, openRecords } from "./open-records.ts";
import { sentenceFor } from "./start-sentence.ts";
import { holdFolder } from "./store/hold-folder.ts";

/** A data folder that the bench makes is its own user's alone. */
const ownOnly = 0o700;

/** A back-up that a technician made ready takes its place, before anything is open. */
function bringBackWanted(
  path: string,
  clock: Clock,
  anchorTo: string | undefined,
  note: (sentence: string) => void,
): void {
  const found = restoreWanted(path, clock, anchorTo);
  if (found === undefined) return;
  if ("error" in found)
    note(`the back-up was not brought back: ${sentenceFor(found.error) ?? found.error.message}`);
  else note(`a back-up was brought back; what was there before: ${found.replaced ?? "nothing"}`);
}

/**
 * Holds the data folder, made where it is not there, and opens the records in it for this bench alone, until it is let
 * go. Copies of the log's anchors are looked for at `anchorTo` too.
 *
 * @throws StoreError or a file system error; then nothing is held.
 */
export function openHeldRecords(
  dataFolder: string,
  clock: Clock,
  anchorTo: string | undefined,
  note: (sentence: string) => void,
): { opened: OpenedRecords; letGo: () => void } {
  mkdirSync(dataFolder, { recursive: true, mode: ownOnly });
  const letGo = holdFolder(dataFolder);
  try {
    bringBackWanted(logFile(dataFolder), clock, anchorTo, note);
    return { opened: openRecords(logFile(dataFolder), note, anchorTo), letGo };
  } catch (error) {
    letGo();
    throw error;
  }
}
