import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadAttempt } from "../../server/attempt/load-attempt.ts";
import { leadsOfSpecs } from "../../server/board/leads-of-cables.ts";
import { systemClock } from "../../server/clock/system-clock.ts";
import { MomentWalk } from "../../server/desk/moments.ts";
import { sortedPage, type WantedOrder } from "../../server/desk/sorted-page.ts";
import { scenarioKit } from "../../server/library.ts";
import type { AttemptCursor } from "../../server/store/attempt-order.ts";
import { type AttemptFilter, AttemptReader } from "../../server/store/attempt-reader.ts";
import { LogReader } from "../../server/store/log-reader.ts";
import { LogWriter, type NewEvent } from "../../server/store/log-writer.ts";
import { type Connection, openForReading, openForWriting } from "../../server/store/open-database.ts";
import { conductorId } from "../../shared/board/ids.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import { byBench } from "../../shared/protocol/author.ts";
import { listColumns } from "../../shared/protocol/desk-view.ts";
import { judge } from "../../shared/rules/judge.ts";
import { seeded } from "../seeded.ts";
import { type SpeedLine, ms, processorMs, quantile, timedMs } from "./speed-line.ts";

const attemptCount = 100_000;
/** Of the attempts that are replayed: a long afternoon's work. The others are short, so that the log fits a test. */
const longEventCount = 300;
const longEvery = 1000;

const learnerCount = 400;

/** What the start of an attempt tells but for who and how. */
const startOf = (scenario: string, documentHash = "00") => ({
  scenario,
  scenarioRevision: 1,
  scenarioHash: documentHash,
  board: "workshop",
  boardHash: documentHash,
  rulePackVersion: "1",
  softwareVersion: "0.1.0",
  kind: "first",
  isExistingCircuit: false,
});

/** Fills a log through its own writer, many attempts an append; gives the ids of those with many events. */
export function fill(writer: LogWriter, random: () => number, count: number, prefix = "attempt"): string[] {
  const full = { joins: [], codes: [], unknown: [] };
  const joins = Array.from({ length: 60 }, (_, index) => `socket-${index}.a.L~socket-${index + 1}.b.L`);
  const verdict = { findings: [{ weight: "fix" }], proposal: "not-yet" };
  const documentHash = writer.keepDocument("board", Buffer.from("a board"));
  const eventsOf = (attemptId: string, isLong: boolean): NewEvent[] => [
    {
      attemptId,
      author: byBench,
      type: "attempt-started",
      content: {
        ...startOf(`scenario-${Math.floor(random() * 20)}`, documentHash),
        learner: `learner-${Math.floor(random() * learnerCount)}`,
        mode: random() < 0.2 ? "assessed" : "practice",
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
  for (let from = 0; from < count; from += longEvery) {
    const ids = Array.from(
      { length: Math.min(longEvery, count - from) },
      (_, index) => `${prefix}-${from + index}`,
    );
    writer.append(ids.flatMap((id, index) => eventsOf(id, index === 0)));
    long.push(ids[0] ?? "");
  }
  return long;
}

const orders = listColumns.map((by): WantedOrder => ({ by, isUp: true, language: "en" }));
const learnerIds = Array.from({ length: learnerCount }, (_, index) => `learner-${index}`);
/** Learners and tasks by name, without the keys that names lie under. */
const named = {
  people: {
    learnerNames: () =>
      new Map(learnerIds.map((id, index) => [id, `Learner ${(index * 37) % learnerCount}`])),
    toldOf: () => undefined,
  },
  scenarios: {
    kits: new Map(
      Array.from({ length: 20 }, (_, index) => {
        const title = `Task ${(index * 7) % 20}`;
        return [
          `scenario-${index}`,
          { scenario: { id: `scenario-${index}`, title: { en: title, pl: title } } },
        ];
      }),
    ),
  },
} as unknown as Parameters<typeof sortedPage>[0];

/** A page in each order, of the whole list, of a narrowed one, and further down. */
export function sortedMs(
  database: Connection,
  random: () => number,
  anyAttempt = () => `attempt-${Math.floor(random() * attemptCount)}`,
): number {
  const reader = new AttemptReader(database);
  const times: number[] = [];
  for (const isUp of [true, false])
    for (const order of orders.map((one) => ({ ...one, isUp }))) {
      const after = reader.byId(anyAttempt());
      const scenario = `scenario-${Math.floor(random() * 20)}`;
      const page = (filter: AttemptFilter, from?: AttemptCursor) =>
        processorMs(() => sortedPage(named, reader, filter, 50, from, order));
      times.push(page({}), page({}, after), page({ scenario, mode: "assessed" }), page({ status: "left" }));
      times.push(page({ status: "handed-in" }), page({ isDecided: false }, after), page({ decision: "met" }));
      times.push(page({ learners: learnerIds.slice(0, 40) }), page({ fromWallMs: 0 }));
    }
  return quantile(times, 0.95);
}

/** A moment of an afternoon's work at a real task, judged: a lead at a time goes in, and comes out again. */
function momentMs(): number {
  const bytes = readFileSync("scenarios/ring-and-spurs.json");
  const kit = scenarioKit(bytes, "ring-and-spurs.json");
  const board = readBoard(readFileSync("hardware/boards/workshop.json", "utf8"), "workshop.json");
  if ("problems" in kit || !board.ok) throw new Error("the task or its board cannot be read");
  const joins = leadsOfSpecs(board.value, kit.scenario.modelAnswers[0]?.cables ?? []).map((lead) =>
    conductorId(...lead),
  );
  const folder = mkdtempSync(join(tmpdir(), "spurwise-speed-"));
  try {
    const path = join(folder, "log.db");
    const database = openForWriting(path);
    const writer = new LogWriter(database, path, systemClock());
    const event = (type: string, content: object) =>
      ({ attemptId: "long", author: byBench, type, content }) as NewEvent;
    const started = { ...startOf("ring-and-spurs"), learner: null, mode: "practice" };
    const turns = Array.from({ length: longEventCount }, (_, index) => {
      const one = [joins[index % joins.length]];
      const isIn = Math.floor(index / joins.length) % 2 === 0;
      return event("sensed", isIn ? { added: one, removed: [] } : { added: [], removed: one });
    });
    writer.append([event("attempt-started", started), ...turns]);
    const rows = new LogReader(database).rowsOfAttempt("long");
    const walks = [1, 2, 3].map(() => new MomentWalk({ kit, board: board.value, judge }, "long"));
    const times = rows.map((row) => Math.min(...walks.map((walk) => timedMs(() => walk.take(row)))));
    database.close();
    return quantile(times, 0.95);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function pageMs(database: Connection, random: () => number): number {
  const reader = new AttemptReader(database);
  const times: number[] = [];
  for (let turn = 0; turn < 20; turn += 1) {
    const learner = `learner-${Math.floor(random() * learnerCount)}`;
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
    const long = fill(new LogWriter(writing, path, systemClock()), random, attemptCount);
    writing.close();
    const database = openForReading(path);
    const listMs = pageMs(database, random);
    const orderMs = sortedMs(database, random);
    const log = new LogReader(database);
    const replays = long
      .slice(0, 50)
      .map((id) => processorMs(() => void loadAttempt(id, log.rowsOfAttempt(id))));
    database.close();
    const replayMs = quantile(replays, 0.95);
    const judgedMs = momentMs();
    return [
      { what: "a page of 100,000 attempts, p95", reached: ms(listMs), target: "50 ms", ok: listMs <= 50 },
      {
        what: "the same in another order, narrowed or not, processor, p95",
        reached: ms(orderMs),
        target: "50 ms",
        ok: orderMs <= 50,
      },
      {
        what: "a moment of a replay judged, p95",
        reached: ms(judgedMs),
        target: "20 ms",
        ok: judgedMs <= 20,
      },
      {
        what: `an attempt of ${longEventCount} events replayed, processor, p95`,
        reached: ms(replayMs),
        target: "100 ms",
        ok: replayMs <= 100,
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
