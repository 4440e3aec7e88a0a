import type { Health } from "../../shared/protocol/socket-events.ts";
import type { Timers } from "../clock/clock.ts";
import { readChoice, writeChoice } from "./programs.ts";

const lookEveryMs = 1000;
/** On a Pi with long records; proving them takes the most of it. */
const mostLooks = 300;

interface TrialParts {
  data: string;
  timers: Timers;
  health: () => Pick<Health, "isReady" | "log">;
  /** It was not healthy in its time, and says so for the next start. */
  failed: () => void;
}

/**
 * Watches a program that was just brought up to date until it is healthy, which ends its trial: its records proved, and
 * its board ready where one was before. One that is not gives way at the next start. Gives what ends the watch.
 */
export function watchTrial({ data, timers, health, failed }: TrialParts): () => void {
  let cancel: () => void = () => undefined;
  const end = (isFailed: boolean): void => {
    const choice = readChoice(data);
    if (!choice?.trial) return;
    writeChoice(data, { ...choice, trial: isFailed ? { ...choice.trial, isFailed } : null });
    if (isFailed) failed();
  };
  const look = (left: number): void => {
    const { isReady, log } = health();
    const isBoardNeeded = readChoice(data)?.trial?.wasBoardReady ?? false;
    if (log.state === "sound" && (isReady || !isBoardNeeded)) return end(false);
    if (log.state === "damaged" || left === 0) return end(true);
    cancel = timers.after(lookEveryMs, () => look(left - 1));
  };
  look(mostLooks);
  return () => cancel();
}
