import fc from "fast-check";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import type { AttemptEvent } from "../../../server/attempt/attempt-events.ts";
import { run as rebuildCommand } from "../../../server/commands/rebuild.ts";
import { AttemptReader, type AttemptFilter } from "../../../server/store/attempt-reader.ts";
import { holdFolder } from "../../../server/store/hold-folder.ts";
import { LogReader, type LogCursor } from "../../../server/store/log-reader.ts";
import { LogWriter, type NewEvent } from "../../../server/store/log-writer.ts";
import { type Connection, openForWriting } from "../../../server/store/open-database.ts";
import { byBench } from "../../../shared/protocol/author.ts";
import type { LogRow } from "../../../shared/protocol/log-row.ts";
import type { Verdict } from "../../../shared/rules/verdict.ts";
import { testDepth } from "../../depth.ts";
import { ManualClock } from "../manual-clock.ts";
import { temporaryFolder } from "../temporary-folder.ts";
import { expectAsRebuilt, projected } from "./table-of-attempts.ts";

const full = { joins: [], codes: [], unknown: [] };
const verdictOf = (weights: string[], proposal: Verdict["proposal"]): Verdict =>
  ({ findings: weights.map((weight) => ({ weight })), proposal }) as unknown as Verdict;

const started = (change: object = {}): AttemptEvent => ({
  type: "attempt-started",
  content: {
    scenario: "first-spur",
    scenarioRevision: 1,
    scenarioHash: "00",
    board: "small",
    boardHash: "00",
    rulePackVersion: "1",
    softwareVersion: "0.1.0",
    learner: "learner-1",
    kind: "first",
    mode: "practice",
    isExistingCircuit: false,
    ...change,
  },
});
const handedIn = (weights: string[], proposal: Verdict["proposal"] = "not-yet"): AttemptEvent => ({
  type: "handed-in",
  content: { full, wiringHash: "00", verdict: verdictOf(weights, proposal), tryCount: 0 },
});
const ready: AttemptEvent = {
  type: "ready",
  content: { full, wiringHash: "00", verdict: verdictOf([], "met") },
};
const left: AttemptEvent = { type: "attempt-left", content: { reason: "left" } };
const asked = (isTry: boolean): AttemptEvent => ({
  type: "verdict-asked",
  content: { isTry, wiringHash: "00", verdict: verdictOf([], "met") },
});
const of = (attemptId: string, ...events: AttemptEvent[]): NewEvent[] =>
  events.map((event) => ({ attemptId, author: byBench, ...event }));

interface Log {
  path: string;
  database: Connection;
  clock: ManualClock;
  writer: LogWriter;
  reader: LogReader;
  attempts: AttemptReader;
}

function newLog(path = join(temporaryFolder(), "spurwise.db")): Log {
  const database = openForWriting(path);
  onTestFinished(() => void database.close());
  const clock = new ManualClock();
  const writer = new LogWriter(database, path, clock);
  const reader = new LogReader(database);
  return { path, database, clock, writer, reader, attempts: new AttemptReader(database) };
}

describe("what a learner has met", () => {
  it.each([
    { what: "handed in in practice, proposed met", events: [started(), handedIn([], "met")], isMet: true },
    { what: "proposed not yet", events: [started(), handedIn(["fix"], "not-yet")], isMet: false },
    { what: "not handed in", events: [started(), ready, left], isMet: false },
    { what: "somebody else's", events: [started({ learner: "other" }), handedIn([], "met")], isMet: false },
    {
      what: "assessed and not decided: the proposal is not theirs to see",
      events: [started({ mode: "assessed" }), handedIn([], "met")],
      isMet: false,
    },
  ])("$what: $isMet", ({ events, isMet }) => {
    const { writer, attempts } = newLog();
    writer.append(of("a", ...events));
    expect(attempts.scenariosMetBy("learner-1")).toEqual(isMet ? ["first-spur"] : []);
  });

  it("is named once, however often it was met, and stays met when it is tried again", () => {
    const { writer, attempts } = newLog();
    for (const attempt of ["a", "b"]) writer.append(of(attempt, started(), handedIn([], "met")));
    writer.append(of("c", started(), handedIn(["danger"], "not-yet")));
    expect(attempts.scenariosMetBy("learner-1")).toEqual(["first-spur"]);
  });

  it.each([
    { decision: "met", isReleased: true, isMet: true },
    { decision: "met", isReleased: false, isMet: false },
    { decision: "not-yet", isReleased: true, isMet: false },
  ])(
    "is what an assessor decided, once it is released: $decision, $isReleased",
    ({ decision, isReleased, isMet }) => {
      const { writer, attempts, database } = newLog();
      writer.append(of("a", started({ mode: "assessed" }), handedIn([], isMet ? "not-yet" : "met")));
      database
        .prepare("UPDATE attempt SET decision = ?, released_wall_ms = ?")
        .run(decision, isReleased ? 1 : null);
      expect(attempts.scenariosMetBy("learner-1")).toEqual(isMet ? ["first-spur"] : []);
    },
  );
});

describe("the table of attempts", () => {
  it("tells of each attempt what the log tells: who, what, when, how often, and how it was handed in", () => {
    const { writer, clock, attempts } = newLog();
    const startMs = clock.wallMs();
    writer.append([{ attemptId: null, type: "boot", author: byBench, content: {} }]);
    writer.append(of("a", started()));
    clock.advance(1000);
    writer.append(
      of("a", asked(true), asked(false), {
        type: "hint-given",
        content: { number: 1, text: { en: "Look.", pl: "Patrz." } },
      }),
    );
    writer.append(of("a", ready));
    expect(attempts.byId("a")).toMatchObject({
      status: "ready",
      readyWallMs: startMs + 1000,
      proposal: null,
      dangerCount: null,
    });
    clock.advance(1000);
    writer.append(of("a", handedIn(["danger", "fix", "fix", "note"])));
    clock.advance(1000);
    writer.append(of("a", left));
    expect(attempts.byId("a")).toEqual({
      attemptId: "a",
      benchId: writer.benchId,
      startBoot: 1,
      startSequence: 1,
      learner: "learner-1",
      scenario: "first-spur",
      mode: "practice",
      kind: "first",
      status: "handed-in",
      startedWallMs: startMs,
      lastWallMs: startMs + 3000,
      readyWallMs: startMs + 1000,
      handedInWallMs: startMs + 2000,
      eventCount: 7,
      tryCount: 1,
      hintCount: 1,
      dangerCount: 1,
      fixCount: 2,
      queryCount: 0,
      noteCount: 1,
      proposal: "not-yet",
      decision: null,
      decidedBy: null,
      decidedWallMs: null,
      overrideCount: null,
      nextKind: null,
      declaredWallMs: null,
      sealedWallMs: null,
      releasedWallMs: null,
      review: null,
      reviewedWallMs: null,
    });
  });

  it("is no longer waiting once the board was changed, and stays waiting while another step is looked at", () => {
    const { writer, attempts } = newLog();
    writer.append(
      of("a", started(), ready, { type: "step-entered", content: { step: "plan", isWaiting: true } }),
    );
    expect(attempts.byId("a")?.status).toBe("ready");
    writer.append(of("a", { type: "ready-ended", content: { reason: "board-changed" } }));
    expect(attempts.byId("a")).toMatchObject({ status: "open", readyWallMs: null });
  });

  it("keeps what is strange in the log out and goes on: an event before its start, one that is not in its form", () => {
    const { writer, attempts, database } = newLog();
    writer.append(of("a", left));
    writer.append([{ attemptId: "b", type: "attempt-started", author: byBench, content: { scenario: 7 } }]);
    expect(attempts.page({}, 10).attempts).toEqual([]);
    writer.append(of("b", started()));
    writer.append([{ attemptId: "b", type: "handed-in", author: byBench, content: { verdict: null } }]);
    expect(attempts.byId("b")).toMatchObject({ status: "open", eventCount: 2 });
    expectAsRebuilt(database);
  });

  it("knows what stands on the bench by its start and its leaving, whatever is written to other attempts", () => {
    const { writer, attempts } = newLog();
    const work = () => attempts.workOf(writer.benchId);
    expect(work()).toBeUndefined();
    writer.append(of("a", started(), handedIn([])));
    expect(work()).toEqual({ attemptId: "a", isOnBench: true });
    writer.append(of("a", left));
    expect(work()).toEqual({ attemptId: "a", isOnBench: false });
    writer.append(of("b", started()));
    writer.append(of("a", asked(false), left));
    expect(work()).toEqual({ attemptId: "b", isOnBench: true });
  });

  it("is filled from a log of before there was such a table, when it is first opened for writing", () => {
    const { writer, database, path } = newLog();
    writer.append(of("a", started(), handedIn(["fix"])));
    const kept = projected(database);
    database.exec("DROP TABLE attempt; DROP TABLE bench_work; DROP TABLE projection; DROP TABLE person");
    database.exec("DROP INDEX log_apart; DROP INDEX log_shown");
    database.pragma("user_version = 1");
    database.close();
    const again = newLog(path);
    expect(projected(again.database)).toEqual(kept);
    expect(again.attempts.byId("a")).toMatchObject({ fixCount: 1 });
  });

  it("has nothing of an append that did not fit on the disk", () => {
    const { writer, database } = newLog();
    writer.append(of("a", started()));
    const kept = projected(database);
    database.pragma(`max_page_count = ${Number(database.pragma("page_count", { simple: true }))}`);
    const append = () =>
      writer.append([
        ...of("b", started()),
        { attemptId: "b", type: "sensed", author: byBench, content: { text: "x".repeat(20_000) } },
      ]);
    expect(append).toThrow(expect.objectContaining({ code: "disk-full" }) as Error);
    expect(projected(database)).toEqual(kept);
    database.pragma("max_page_count = 100000");
    append();
    expectAsRebuilt(database);
  });

  it("is to the byte what a rebuild makes, after any stream of events, starts and refused appends", () => {
    const id = fc.constantFrom("a", "b", "c");
    const event: fc.Arbitrary<AttemptEvent> = fc.oneof(
      fc
        .record({ mode: fc.constantFrom("practice", "assessed"), learner: fc.constantFrom(null, "l1", "l2") })
        .map(started),
      fc.boolean().map(asked),
      fc.constantFrom(ready, left, handedIn(["fix"]), handedIn([], "met"), handedIn([{}] as never)),
      fc.constantFrom<AttemptEvent>(
        { type: "ready-ended", content: { reason: "taken-back" } },
        { type: "step-entered", content: { step: "plan" } },
        { type: "step-entered", content: { step: "plan", isWaiting: true } },
        { type: "board-fault", content: { faults: [] } },
      ),
      fc.constant({ type: "handed-in", content: {} } as unknown as AttemptEvent),
    );
    const act = fc.oneof(
      { weight: 8, arbitrary: fc.tuple(id, fc.array(event, { minLength: 1, maxLength: 3 })) },
      { weight: 1, arbitrary: fc.constant("restart" as const) },
      { weight: 1, arbitrary: fc.constant("refused" as const) },
      { weight: 1, arbitrary: fc.integer({ min: -1e9, max: 1e9 }) },
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 30 }), (acts) => {
        const path = join(temporaryFolder(), "spurwise.db");
        let log = newLog(path);
        for (const one of acts)
          if (one === "restart") {
            log.database.close();
            log = newLog(path);
          } else if (one === "refused") {
            log.database.pragma("query_only = ON");
            expect(() => log.writer.append(of("a", started(), left))).toThrow();
            log.database.pragma("query_only = OFF");
          } else if (typeof one === "number") log.clock.setWall(1_700_000_000_000 + one);
          else log.writer.append(of(one[0], ...one[1]));
        expectAsRebuilt(log.database);
        log.database.close();
      }),
      { numRuns: 40 * testDepth },
    );
  });
});

describe("a list of attempts", () => {
  /** Attempts on three benches' worth of starts, of changing learners, scenarios, modes and ends. */
  function manyAttempts(count: number): Log {
    const log = newLog();
    for (let number = 0; number < count; number += 1)
      log.writer.append(
        of(
          `attempt-${number}`,
          started({
            learner: number % 5 === 0 ? null : `learner-${number % 3}`,
            scenario: `scenario-${number % 4}`,
            mode: number % 2 === 0 ? "practice" : "assessed",
          }),
          ...(number % 3 === 0 ? [handedIn([], number % 2 === 0 ? "met" : "not-yet")] : [left]),
        ),
      );
    return log;
  }

  const pagesOf = (attempts: AttemptReader, filter: AttemptFilter, limit: number): string[] => {
    const ids: string[] = [];
    let page = attempts.page(filter, limit);
    for (;;) {
      ids.push(...page.attempts.map(({ attemptId }) => attemptId));
      if (!page.next) return ids;
      page = attempts.page(filter, limit, page.next);
    }
  };

  it("comes in pages, the last started first, each attempt once, by any filter", () => {
    const { attempts } = manyAttempts(60);
    const all = attempts.page({}, 1000).attempts;
    expect(all.map(({ attemptId }) => attemptId)).toEqual(
      Array.from({ length: 60 }, (_, index) => `attempt-${59 - index}`),
    );
    const filter = fc.record<AttemptFilter>(
      {
        learner: fc.constantFrom(null, "learner-1", "nobody"),
        scenario: fc.constantFrom("scenario-0", "scenario-3"),
        mode: fc.constantFrom("practice", "assessed"),
        status: fc.constantFrom("handed-in", "left", "open"),
        proposal: fc.constantFrom("met", "not-yet"),
        isDecided: fc.boolean(),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(filter, fc.integer({ min: 1, max: 61 }), (wanted, limit) => {
        const expected = all.filter((record) =>
          Object.entries(wanted).every(([key, value]) =>
            key === "isDecided" ? (record.decision !== null) === value : record[key as "learner"] === value,
          ),
        );
        expect(pagesOf(attempts, wanted, limit)).toEqual(expected.map(({ attemptId }) => attemptId));
      }),
      { numRuns: 60 * testDepth },
    );
  });

  it("keeps its order while attempts in it are worked on and new ones start", () => {
    const { attempts, writer } = manyAttempts(10);
    const first = attempts.page({}, 4);
    writer.append(of("attempt-2", asked(true)));
    writer.append(of("new", started()));
    const rest = attempts.page({}, 100, first.next);
    expect([...first.attempts, ...rest.attempts].map(({ attemptId }) => attemptId)).toEqual(
      Array.from({ length: 10 }, (_, index) => `attempt-${9 - index}`),
    );
  });
});

describe("the log in batches", () => {
  it("is all of it, in order, once, whatever the size of a batch and over a restart", () => {
    const { writer, database, path } = newLog();
    for (let number = 0; number < 5; number += 1) writer.append(of(`a${number}`, started(), left));
    database.close();
    const { writer: later, reader } = newLog(path);
    later.append(of("b", started()));
    const all = [...reader.rows()];
    expect(all).toHaveLength(11);
    for (const limit of [1, 3, 11, 100]) {
      const got: LogRow[] = [];
      let place: LogCursor | undefined;
      for (;;) {
        const batch = reader.rowsAfter(place, limit);
        got.push(...batch);
        place = batch.at(-1) ?? place;
        if (batch.length < limit) break;
      }
      expect(got).toEqual(all);
      expect(reader.rowsAfter(place, limit)).toEqual([]);
    }
  });

  it("of one attempt is found through an index, not by reading the log", () => {
    const { database } = newLog();
    const plan = database
      .prepare<[], { detail: string }>(
        "EXPLAIN QUERY PLAN SELECT * FROM log WHERE attempt_id = 'a' ORDER BY bench_id, boot, sequence",
      )
      .all();
    expect(plan.map(({ detail }) => detail).join("; ")).toMatch(/^SEARCH log USING INDEX log_of_attempt/);
  });
});

describe("the rebuild command", () => {
  it("makes the table anew from the log, and leaves one alone that a bench is using", async () => {
    const { writer, database, path } = newLog();
    writer.append(of("a", started(), handedIn(["fix"])));
    const kept = projected(database);
    database.exec("UPDATE attempt SET learner = 'somebody else'; DELETE FROM bench_work");
    database.close();
    const letGo = holdFolder(join(path, ".."));
    expect(await rebuildCommand([path])).toBe(2);
    letGo();
    expect(await rebuildCommand([path])).toBe(0);
    expect(projected(newLog(path).database)).toEqual(kept);
    expect(await rebuildCommand([temporaryFolder()])).toBe(2);
  });
});
