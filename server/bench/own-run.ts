import type { Actor } from "../acts/actor.ts";
import type { AttemptRun } from "../attempt/attempt-run.ts";
import type { BenchCore } from "./bench-core.ts";

/** The attempt on the bench where it is the actor's own; a guest's is nobody's by name. */
export function ownRun({ work }: BenchCore, { kind, learner }: Actor): AttemptRun | undefined {
  const isWorker = kind === "learner" || kind === "guest";
  return isWorker && work.run?.state.learner === learner ? work.run : undefined;
}
