import { mkdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import type { TaskStep } from "../../shared/protocol/keep-view.ts";
import { systemClock } from "../clock/system-clock.ts";
import { logFile } from "../folders.ts";
import { backUp } from "../keeping/back-up.ts";
import type { UpdateTask } from "../keeping/records-task.ts";
import { restore } from "../keeping/restore.ts";
import { beforeIn, incomingIn } from "./programs.ts";
import { takeIn } from "./take-in.ts";
import { tryOut } from "./try-out.ts";

type Say = (step: { step: TaskStep; doneCount: number; totalCount: number }) => void;

/** On a Pi with long records; proving them takes the most of it. */
const mostTrialMs = 180_000;

/**
 * Takes an update in, makes a back-up of the records as they are, and lets the new program show on a copy of them that it
 * is healthy. Gives its version. The bench may be at work; nothing of it is another after this.
 *
 * @throws UpdateError or StoreError; then nothing is left of it.
 */
export async function prepareUpdate(task: UpdateTask, say: Say): Promise<string> {
  const { from, publicKey, path, version: running, modules, lock } = task;
  const data = dirname(path);
  const into = incomingIn(data);
  mkdirSync(dirname(into), { recursive: true, mode: 0o700 });
  const checked = (doneCount: number, totalCount: number): void =>
    say({ step: "checking", doneCount, totalCount });
  const { version } = takeIn({ from, publicKey, into, version: running, modules, lock, say: checked });
  try {
    const copy = join(dirname(into), "trial");
    rmSync(copy, { recursive: true, force: true });
    const clock = systemClock();
    rmSync(beforeIn(data), { recursive: true, force: true });
    const { file } = await backUp({
      ...{ path, to: beforeIn(data), softwareVersion: running, wallMs: Math.round(clock.wallMs()), say },
    });
    mkdirSync(copy, { mode: 0o700 });
    restore({ from: file, path: logFile(copy), clock, isDryRun: false, say: () => undefined });
    say({ step: "trying", doneCount: 0, totalCount: 0 });
    const environment = process.env;
    await tryOut({ program: into, version, data: copy, environment, mostMs: mostTrialMs });
    return version;
  } catch (error) {
    rmSync(into, { recursive: true, force: true });
    throw error;
  }
}
