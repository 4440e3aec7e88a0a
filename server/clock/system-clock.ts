import { existsSync, readFileSync } from "node:fs";
import { performance } from "node:perf_hooks";
import type { ClockState } from "../../shared/protocol/log-row.ts";
import type { Clock, Timers } from "./clock.ts";

const syncedMark = "/run/systemd/timesync/synchronized";
const batteryMark = "/sys/class/rtc/rtc0/hctosys";
const stateKeptMs = 60_000;

const wasSetByBattery = (): boolean => {
  try {
    return readFileSync(batteryMark, "utf8").trim() === "1";
  } catch {
    return false;
  }
};

/**
 * What is known of the machine's clock: set over the network (the time service leaves a mark), set at boot by
 * a battery-backed clock, or neither. Where it cannot be told it counts as unsynced.
 */
export const readClockState = (): ClockState =>
  existsSync(syncedMark) ? "synced" : wasSetByBattery() ? "battery" : "unsynced";

/** The machine's own clock. Its state is looked at again when it is asked for and a minute has gone by. */
export function systemClock(): Clock {
  let state = readClockState();
  let readAtMs = performance.now();
  return {
    monotonicMs: () => performance.now(),
    wallMs: () => Date.now(),
    state: () => {
      if (performance.now() - readAtMs > stateKeptMs) {
        state = readClockState();
        readAtMs = performance.now();
      }
      return state;
    },
  };
}

/** The machine's own timers. */
export const systemTimers: Timers = {
  after: (delayMs, run) => {
    const timer = setTimeout(run, delayMs);
    return () => clearTimeout(timer);
  },
};
