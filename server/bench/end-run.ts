import type { Author } from "../../shared/protocol/author.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import { StoreError } from "../store/store-error.ts";
import type { BenchCore } from "./bench-core.ts";

type Leaving = Extract<AttemptEvent, { type: "attempt-left" }>["content"];

/**
 * Ends the attempt on the bench: the log holds all of it and why it ended. One of before the start ends as well, also
 * where the board cannot be read.
 *
 * @throws StoreError; then it goes on.
 */
export function endRun(core: BenchCore, content: Leaving, author: Author = core.session.author): void {
  const { run, toResume } = core.work;
  if (run) {
    run.record([{ type: "attempt-left", content }], author);
    run.stop();
  } else if (toResume) {
    const { records } = core.parts;
    if (!records) throw new StoreError("damaged", {});
    records.log.append([{ attemptId: toResume.id, type: "attempt-left", author, content }]);
  } else return;
  core.work.goOn(undefined);
  core.work.end();
}
