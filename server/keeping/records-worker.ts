import { doRecordsTask } from "./do-records-task.ts";
import type { FromRecordsWorker, RecordsTask } from "./records-task.ts";

let told: Promise<void> = Promise.resolve();
const tell = (message: FromRecordsWorker): void => {
  told = new Promise((resolve) => {
    if (process.send) process.send(message, () => resolve());
    else resolve();
  });
};

// One task, and then the link is let go, with which the process ends; it ends as well where the bench has gone.
process.once("disconnect", () => process.exit());
process.once("message", (task) => {
  void doRecordsTask(task as RecordsTask, tell)
    .then(() => told)
    .finally(() => process.disconnect());
});
