import type { BenchReport, LedBench } from "../../../shared/protocol/lead-view.ts";
import type { Fact } from "../../../shared/protocol/bench-view.ts";
import type { LeadKey } from "./lead-en.ts";

/** A sentence of a tile, and whether somebody has to do something about it. */
export interface TileLine {
  key: LeadKey;
  facts: Record<string, Fact>;
  isSerious: boolean;
}

/** A clock that is off by less is not worth a word. */
const sameClockMs = 5000;
const secondMs = 1000;
const minuteMs = 60_000;

/** Minutes and seconds; hours where there are any. */
export function spanText(ms: number): string {
  const seconds = Math.max(0, Math.round(ms / secondMs));
  const two = (count: number) => String(count).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

const line = (key: LeadKey, facts: Record<string, Fact> = {}, isSerious = false): TileLine => ({
  key,
  facts,
  isSerious,
});

function timeLines(report: BenchReport, nowWallMs: number): TileLine[] {
  const { work, timeUpWallMs, heldTimeMs, isFrozen } = report;
  const lines: TileLine[] = [];
  if (work?.readyWallMs)
    lines.push(line("bench.waits", { time: spanText(nowWallMs - work.readyWallMs) }, true));
  if (work?.isWaitingForTrainer) lines.push(line("bench.stuck", {}, true));
  if (isFrozen && heldTimeMs === null) lines.push(line("bench.frozen"));
  else if (isFrozen) lines.push(line("bench.frozen-with", { time: spanText(heldTimeMs ?? 0) }));
  if (timeUpWallMs !== null) {
    const leftMs = timeUpWallMs - nowWallMs;
    lines.push(
      leftMs > 0
        ? line("bench.time-left", { time: spanText(leftMs) })
        : line("bench.time-up", { time: spanText(-leftMs) }, true),
    );
  }
  return lines;
}

function clockLines({ clock }: BenchReport, behindMs: number): TileLine[] {
  const lines = [line(`bench.clock-${clock}`, {}, clock === "unsynced")];
  if (Math.abs(behindMs) < sameClockMs) return lines;
  const time = spanText(Math.abs(behindMs));
  lines.push(
    line(behindMs > 0 ? "bench.clock-behind" : "bench.clock-ahead", { time }, Math.abs(behindMs) > minuteMs),
  );
  return lines;
}

function troubleLines({ state, faults, records }: BenchReport, nameOf: (key: LeadKey) => string): TileLine[] {
  const lines: TileLine[] = [];
  if (state === "starting") lines.push(line("bench.starting"));
  if (state === "no-board") lines.push(line("bench.no-board", {}, true));
  if (faults.length > 0)
    lines.push(
      line("bench.faults", { faults: faults.map((kind) => nameOf(`fault.${kind}`)).join(", ") }, true),
    );
  if (records !== "sound") lines.push(line(`bench.${records}`, {}, true));
  return lines.length > 0 ? lines : [line("bench.well")];
}

function packLine({ packVersion, waitingPackVersion }: BenchReport): TileLine[] {
  const inForce = packVersion > 0 ? line("bench.pack", { version: packVersion }) : line("bench.no-pack");
  return waitingPackVersion === null
    ? [inForce]
    : [inForce, line("bench.pack-waits", { version: waitingPackVersion })];
}

/**
 * What a tile says of a bench beside its learner, task and plan: waiting and time, clock, faults, pack.
 *
 * @param leadWallMs the time by the lead's clock; the bench's own times are read by the bench's clock.
 */
export function tileLines(
  { report, clockBehindMs }: LedBench,
  leadWallMs: number,
  nameOf: (key: LeadKey) => string,
): { time: TileLine[]; clock: TileLine[]; trouble: TileLine[]; pack: TileLine[] } {
  if (!report) return { time: [], clock: [], trouble: [], pack: [] };
  return {
    time: timeLines(report, leadWallMs - clockBehindMs),
    clock: clockLines(report, clockBehindMs),
    trouble: troubleLines(report, nameOf),
    pack: packLine(report),
  };
}
