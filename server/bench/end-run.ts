import type { BenchCore } from "./bench-core.ts";

/**
 * Ends the attempt on the bench: the log holds all of it and why it ended.
 *
 * @throws StoreError; then it goes on.
 */
export function endRun(core: BenchCore, reason: "left" | "another-started"): void {
  const { run } = core.work;
  if (!run) return;
  run.record([{ type: "attempt-left", content: { reason } }], core.session.author);
  run.stop();
  core.work.end();
}
