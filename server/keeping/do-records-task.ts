import { rmSync } from "node:fs";
import { systemClock } from "../clock/system-clock.ts";
import { proveLog } from "../store/verify-log.ts";
import { openForReading } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { UpdateError } from "../update/update-error.ts";
import { backUp, keepNewest } from "./back-up.ts";
import { besideOf, makeReady, type RestoreStep } from "./make-ready.ts";
import type { FromRecordsWorker, RecordsTask } from "./records-task.ts";

type Tell = (message: FromRecordsWorker) => void;

const sliceRowCount = 1000;

/** Proves the file and then the chain, and tells how far it has come. */
function check(path: string, tell: Tell): void {
  const database = openForReading(path);
  try {
    const damage = readThrough(database, () => database.pragma("quick_check(1)", { simple: true }));
    if (damage !== "ok")
      return tell({ type: "proved", isSound: false, firstBadRecord: "the file", reason: String(damage) });
    const proof = proveLog(database, sliceRowCount);
    for (;;) {
      const step = proof.next();
      if (!step.done) tell({ type: "progress", doneCount: step.value });
      else return tell({ type: "proved", ...step.value });
    }
  } finally {
    database.close();
  }
}

function madeReady(
  { isTried, ...task }: Extract<RecordsTask, { what: "restore" }>,
  say: (step: RestoreStep) => void,
): FromRecordsWorker {
  try {
    const { manifest, erasedCount } = makeReady({ ...task, clock: systemClock(), say });
    if (isTried) rmSync(besideOf(task.path), { recursive: true, force: true });
    const { rowCount, madeWallMs } = manifest;
    return { type: "ready", rowCount, madeWallMs, erasedCount };
  } catch (error) {
    rmSync(besideOf(task.path), { recursive: true, force: true });
    throw toStoreError(error, task.from);
  }
}

/** Does a task with the records, and tells how far it is and how it ended. @throws what is no fault of records or update */
export async function doRecordsTask(task: RecordsTask, tell: Tell): Promise<void> {
  try {
    if (task.what === "check") return check(task.path, tell);
    const say = (step: Omit<Extract<FromRecordsWorker, { type: "progress" }>, "type">): void =>
      tell({ type: "progress", ...step });
    if (task.what === "restore") return tell(madeReady(task, say));
    if (task.what === "update") {
      const { prepareUpdate } = await import("../update/prepare-update.ts");
      return tell({ type: "tried", version: await prepareUpdate(task, say) });
    }
    const { file, manifest } = await backUp({ ...task, say });
    if (task.keepCount !== undefined) keepNewest(task.to, task.keepCount);
    tell({ type: "backed-up", file, rowCount: manifest.rowCount });
  } catch (error) {
    if (error instanceof StoreError)
      return tell({ type: "failed", code: error.code, reason: String(error.facts["reason"] ?? error.code) });
    if (!(error instanceof UpdateError)) throw error;
    tell({ type: "failed", code: error.code, reason: error.reason });
  }
}
