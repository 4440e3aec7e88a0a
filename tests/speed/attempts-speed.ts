import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadAttempt } from "../../server/attempt/load-attempt.ts";
import { systemClock } from "../../server/clock/system-clock.ts";
import { AttemptReader } from "../../server/store/attempt-reader.ts";
import { LogReader } from "../../server/store/log-reader.ts";
import { LogWriter, type NewEvent } from "../../server/store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "../../server/store/open-database.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { seeded } from "../seeded.ts";
import { ms, quantile, type SpeedLine, timedMs } from "./speed-line.ts";

const attemptCount = 100_000;
/** Of the attempts that are replayed: a long afternoon's work. The others are short, so that the log fits a test. */
const longEventCount = 300;
const longEvery = 1000;

/** Fills a log through its own writer, many attempts an append. */
function fill(writer: LogWriter, random: () => number): string[] {
  const full = { joins: [], codes: [], unknown: [] };
  const joins = Array.from({ length: 60 }, (_, index) => `socket-${index}.a.L~socket-${index + 1}.b.L`);
  const verdict = { findings: [{ weight: "fix" }], proposal: "not-yet" };
  const eventsOf = (attemptId: string, isLong: boolean): NewEvent[] => [
    {
      attemptId,
      author: byBench,
      type: "attempt-started",
      content: {
        scenario: `scenario-${Math.floor(random() * 20)}`,
        scenarioRevision: 1,
        scenarioHash: "00",
        board: "workshop",
        boardHash: "00",
        rulePackVersion: "1",
        softwareVersion: "0.1.0",
        learner: `learner-${Math.floor(random() * 400)}`,
        kind: "first",
        mode: random() < 0.2 ? "assessed" : "practice",
        isExistingCircuit: false,
      },
    },
    ...Array.from({ length: isLong ? longEventCount : 1 }, (_, index) => ({
      attemptId,
      author: byBench,
      type: "sensed" as const,
      content: {
        added: [joins[index % joins.length]],
        removed: [],
        ...(index % 50 === 0 ? { full: { ...full, joins } } : {}),
      },
    })),
    {
      attemptId,
      type: "handed-in",
      author: byBench,
      content: { full, wiringHash: "00", verdict, tryCount: 0 },
    },
  ];
  const long: string[] = [];
  for (let from = 0; from < attemptCount; from += longEvery) {
    const ids = Array.from({ length: longEvery }, (_, index) => `attempt-${from + index}`);
    writer.append(ids.flatMap((id, index) => eventsOf(id, index === 0)));
    long.push(ids[0] ?? "");
  }
  return long;
}

function pageMs(database: Connection, random: () => number): number {
  const reader = new AttemptReader(database);
  const times: number[] = [];
  for (let turn = 0; turn < 20; turn += 1) {
    const learner = `learner-${Math.floor(random() * 400)}`;
    const scenario = `scenario-${Math.floor(random() * 20)}`;
    const after = reader.byId(`attempt-${Math.floor(random() * attemptCount)}`);
    times.push(timedMs(() => reader.page({}, 50, after)));
    times.push(timedMs(() => reader.page({ learner }, 50)));
    times.push(timedMs(() => reader.page({ scenario, mode: "assessed" }, 50, after)));
    // Nothing is found: the whole table is gone through.
    times.push(timedMs(() => reader.page({ status: "ready" }, 50)));
  }
  return quantile(times, 0.95);
}

/** A page of the list of 100,000 attempts, and a long one of them told again from its events. */
export const lines = async (seed: number): Promise<SpeedLine[]> => {
  const folder = mkdtempSync(join(tmpdir(), "spurwise-speed-"));
  const random = seeded(seed);
  try {
    const path = join(folder, "log.db");
    const writing = openForWriting(path);
    const long = fill(new LogWriter(writing, path, systemClock()), random);
    writing.close();
    const database = openForReading(path);
    const listMs = pageMs(database, random);
    const log = new LogReader(database);
    const replays = long.slice(0, 50).map((id) => timedMs(() => void loadAttempt(id, log.rowsOfAttempt(id))));
    database.close();
    const replayMs = quantile(replays, 0.95);
    return [
      { what: "a page of 100,000 attempts, p95", reached: ms(listMs), target: "50 ms", ok: listMs <= 50 },
      {
        what: `an attempt of ${longEventCount} events replayed, p95`,
        reached: ms(replayMs),
        target: "100 ms",
        ok: replayMs <= 100,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
