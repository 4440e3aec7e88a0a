import { byBench } from "../../shared/protocol/author.ts";
import { loadAttempt } from "../attempt/load-attempt.ts";
import type { AttemptEvent } from "../attempt/attempt-events.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import { type ScenarioKit, scenarioKit } from "../library.ts";
import { changeBetween, nothingPlugged, type Plugged } from "../../shared/wiring/plugged.ts";
import { StoreError } from "../store/store-error.ts";
import type { BenchCore, Records } from "./bench-core.ts";

const stateOf = ({ logReader }: Records, attemptId: string): AttemptState | undefined =>
  loadAttempt(attemptId, logReader.rowsOfAttempt(attemptId));

/** The attempt that stands on the bench: worked on, or handed in and not yet cleared from the screen. */
export function attemptOnBench(records: Records): AttemptState | undefined {
  const work = records.attempts.workOf(records.log.benchId);
  return work?.isOnBench ? stateOf(records, work.attemptId) : undefined;
}

/** The scenario as it was when an attempt began, from the store: the file may have changed since. */
export function kitOfAttempt(records: Records, state: AttemptState): ScenarioKit | undefined {
  const bytes = records.logReader.document(state.scenarioHash);
  const kit = bytes && scenarioKit(bytes, `${state.scenario}.json`);
  return kit && !("problems" in kit) ? kit : undefined;
}

/**
 * Goes on with the attempt of before the start, now that the board has been sensed. What differs from when it
 * was last seen becomes an event of its own; an assessed attempt then waits for a trainer.
 *
 * @throws StoreError; then it is tried again with the next sensed state.
 */
export function resumeAttempt(core: BenchCore, plugged: Plugged): void {
  const { parts } = core;
  const { toResume } = core.work;
  if (!toResume || !parts.records) return;
  const kit = kitOfAttempt(parts.records, toResume);
  if (!kit) {
    parts.note(
      `attempt ${toResume.id}: its scenario ${toResume.scenario} can no longer be read; it stays as it is`,
    );
    core.work.goOn(undefined);
    return;
  }
  const run = core.runOf(kit, toResume);
  if (toResume.status !== "handed-in") {
    const change = changeBetween(toResume.plugged, plugged);
    const isTrainerNeeded = toResume.mode === "assessed";
    const events: AttemptEvent[] = [
      ...(change ? [{ type: "changed-while-off" as const, content: { ...change, full: plugged } }] : []),
      { type: "resumed", content: { full: plugged, isTrainerNeeded } },
    ];
    run.record(events, byBench);
    run.sense(plugged);
  }
  core.work.goOn(run);
}

/** What the simulated board comes back with: the leads that were in when the bench stopped. */
export function pluggedBefore(records: Records | undefined): Plugged {
  try {
    const work = records?.attempts.workOf(records.log.benchId);
    return (records && work && stateOf(records, work.attemptId)?.plugged) ?? nothingPlugged;
  } catch (error) {
    // Damage is said where the attempt itself is looked for; the board comes up all the same.
    if (!(error instanceof StoreError)) throw error;
    return nothingPlugged;
  }
}
