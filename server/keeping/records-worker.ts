import { proveLog } from "../store/verify-log.ts";
import { openForReading } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError } from "../store/store-error.ts";
import { backUp, keepNewest } from "./back-up.ts";
import type { FromRecordsWorker, RecordsTask } from "./records-task.ts";

const sliceRowCount = 1000;
const newestKept = 14;

let told: Promise<void> = Promise.resolve();
const tell = (message: FromRecordsWorker): void => {
  told = new Promise((resolve) => {
    if (process.send) process.send(message, () => resolve());
    else resolve();
  });
};

/** Proves the file and then the chain, and tells how far it has come. */
function check(path: string): void {
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

async function run(task: RecordsTask): Promise<void> {
  try {
    if (task.what === "check") return check(task.path);
    const { file } = await backUp({ ...task, say: ({ doneCount }) => tell({ type: "progress", doneCount }) });
    keepNewest(task.to, newestKept);
    tell({ type: "backed-up", file });
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    tell({ type: "failed", code: error.code, reason: String(error.facts["reason"] ?? error.code) });
  }
}

// One task, and then the link is let go, with which the process ends; it ends as well where the bench has gone.
process.once("disconnect", () => process.exit());
process.once("message", (task) => {
  void run(task as RecordsTask)
    .then(() => told)
    .finally(() => process.disconnect());
});
