import { AttemptRun, type AttemptRunParts } from "./attempt-run.ts";
import type { AttemptState } from "./attempt-state.ts";

/** An attempt that nobody works on: nothing is sensed, waited for or written. */
export const stillRun = (
  parts: Pick<AttemptRunParts, "kit" | "board" | "judge">,
  state: AttemptState,
): AttemptRun =>
  new AttemptRun(
    {
      ...parts,
      timers: { after: () => () => undefined },
      append: () => undefined,
      changed: () => undefined,
      troubled: () => undefined,
    },
    state,
  );
