import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { deadSequence } from "./dead-sequence.ts";
import { acts as everyAct } from "../../server/acts/acts.ts";
import { loadAttempt } from "../../server/attempt/load-attempt.ts";
import { pictureOf } from "../../server/attempt/picture-of.ts";
import { kitOfAttempt } from "../../server/bench/resume-attempt.ts";
import { pluggedOf } from "../../shared/wiring/plugged.ts";
import { verifyLog } from "../../server/store/verify-log.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import { planQuestions, steps } from "../../shared/protocol/attempt-words.ts";
import type { ActName } from "../../shared/protocol/acts.ts";
import { judge } from "../../shared/rules/judge.ts";
import { testDepth } from "../depth.ts";
import { expectAsRebuilt } from "./store/table-of-attempts.ts";
import { smallBoard } from "./small-board.ts";
import { temporaryFolder } from "./temporary-folder.ts";
import { firstSpur, TestBench } from "./test-bench.ts";

const contacts = smallBoard().board.stations.flatMap(({ id, entries }) =>
  entries.flatMap(({ letter }) => ["L", "N", "E"].map((role) => `${id}.${letter}.${role}`)),
);
const entries = [...new Set(contacts.map((contact) => contact.slice(0, contact.lastIndexOf("."))))];
const contact = fc.constantFrom(...contacts);
const entry = fc.constantFrom(...entries);
const cable = fc.tuple(entry, entry).map((pair) => pair.sort().join("~"));

const commands: fc.Arbitrary<[string, object]> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(
      fc.constant("plug-cable"),
      fc.record({ entryA: entry, entryB: entry, csaMm2: fc.constantFrom(1.5, 2.5, 95) }),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(fc.constant("plug"), fc.record({ contactA: contact, contactB: contact })),
  },
  { weight: 2, arbitrary: fc.tuple(fc.constant("pull"), fc.record({ what: fc.constant("cable"), cable })) },
  {
    weight: 2,
    arbitrary: fc.tuple(
      fc.constant("pull"),
      fc.record({ what: fc.constant("lead"), contactA: contact, contactB: contact }),
    ),
  },
  { weight: 1, arbitrary: fc.tuple(fc.constant("pull"), fc.constant({ what: "all" })) },
  {
    weight: 2,
    arbitrary: fc.tuple(
      fc.constant("declare"),
      fc.record({ subject: cable, key: fc.constant("csaMm2"), value: fc.constantFrom(1.5, 2.5) }),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constant("go-to-step"), fc.record({ step: fc.constantFrom(...steps) })),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constant("dead-act"), fc.constantFrom(...deadSequence)),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(
      fc.constant("answer-plan"),
      fc.record({ question: fc.constantFrom(...planQuestions), answer: fc.constantFrom(13, 32) }),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(
      fc.constantFrom("undo", "ask-verdict", "ask-hint", "ready", "take-back", "match-as-found"),
      fc.constant({}),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom("hand-in", "leave-attempt", "sign-out"), fc.constant({})),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(
      fc.constant("sign-in"),
      fc.constantFrom({ by: "name", learner: "demo-02" }, { by: "guest" }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(
      fc.constant("start-attempt"),
      fc.constant({ scenario: "first-spur", mode: "practice" }),
    ),
  },
);
const acts = fc.array(fc.oneof({ weight: 4, arbitrary: commands }, { weight: 1, arbitrary: fc.nat(3000) }), {
  minLength: 5,
  maxLength: 40,
});

const existingCircuit = firstSpur({
  isExistingCircuit: true,
  asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never,
});

describe("any stream of commands", () => {
  it("leaves a sound log whose events, folded again, are the attempt on the screen", async () => {
    await fc.assert(
      fc.asyncProperty(acts, fc.boolean(), async (stream, isExisting) => {
        const bench = await startedBench(isExisting);
        for (const act of stream) {
          if (typeof act === "number") {
            bench.clock.advance(act);
            continue;
          }
          const [name, raw] = act;
          const before = { rows: bench.rows().length, view: comparable(bench) };
          const command = everyAct[name as ActName].schema.parse(raw);
          const answer = await bench.bench.handle(name as ActName, command, bench.bench.core.session);
          // A refused command has changed nothing: not the log, not the screen.
          if (!answer.ok) expect({ rows: bench.rows().length, view: comparable(bench) }).toEqual(before);
        }
        bench.clock.advance(3000);
        const { work, board } = bench.bench.core;
        const { run } = work;
        const { sensed } = board;
        if (run) {
          expect(
            loadAttempt(run.state.id, bench.parts.records!.logReader.rowsOfAttempt(run.state.id)),
          ).toEqual(run.state);
          if (run.state.status !== "handed-in" && sensed)
            expect(run.state.plugged).toEqual(pluggedOf(sensed));
        }
        expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
        expectTableAsFolded(bench);
        await bench.stop();
      }),
      { numRuns: 25 * testDepth },
    );
  });
});

async function startedBench(isExisting: boolean): Promise<TestBench> {
  const bench = await new TestBench({ scenarios: [isExisting ? existingCircuit : firstSpur()] }).start();
  await bench.does("sign-in", { by: "name", learner: "demo-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
  await bench.does("accept-caution", {});
  return bench;
}

/** The table of attempts is what the attempts are when their events are folded whole, and what a rebuild makes. */
function expectTableAsFolded(bench: TestBench): void {
  const { attempts, logReader } = bench.parts.records!;
  const listed = attempts.page({}, 1000).attempts;
  expect(listed.length).toBeGreaterThan(0);
  for (const record of listed) {
    const rows = logReader.rowsOfAttempt(record.attemptId);
    const state = loadAttempt(record.attemptId, rows)!;
    const wasHandedIn = rows.some(({ type }) => type === "handed-in");
    expect(record).toMatchObject({
      status: wasHandedIn ? "handed-in" : state.status,
      learner: state.learner,
      tryCount: state.tryCount,
      hintCount: state.hints.length,
      eventCount: rows.length,
      proposal: wasHandedIn ? state.asked?.verdict.proposal : null,
    });
  }
  expectAsRebuilt(bench.writing);
}

const comparable = (bench: TestBench): object => ({ ...bench.view(), revision: 0 });

describe("the log of an attempt", () => {
  it("has the full state at the start and after every fifty changes, and only the change between", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    for (let count = 0; count < 110; count += 1) {
      const isIn = count % 2 === 0;
      bench.port.byHand({ [isIn ? "in" : "out"]: ["socket-1.a.L~way-1.a.L" as never] });
      bench.clock.advance(250);
    }
    const full = bench.events("sensed").map(({ content }) => content["full"] !== undefined);
    expect(full.flatMap((isFull, index) => (isFull ? [index] : []))).toEqual([0, 50, 100]);
    expect(full).toHaveLength(111);
  });

  it("has changes that come within a quarter of a second as one event, and none that was taken back meanwhile", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const before = bench.rows().length;
    bench.port.byHand({ in: ["socket-1.a.L~way-1.a.L" as never] });
    bench.clock.advance(100);
    bench.port.byHand({ in: ["socket-1.a.N~way-1.a.N" as never] });
    expect(bench.attempt().cables[0]?.conductors).toHaveLength(2);
    expect(bench.rows()).toHaveLength(before);
    bench.clock.advance(150);
    expect(bench.rows()).toHaveLength(before + 1);
    bench.port.byHand({ in: ["socket-1.a.E~way-1.a.E" as never] });
    bench.port.byHand({ out: ["socket-1.a.E~way-1.a.E" as never] });
    bench.clock.advance(250);
    expect(bench.rows()).toHaveLength(before + 1);
  });

  it("names the documents it was made with, and they are kept once", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.does("hand-in", {});
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    const [first, second] = bench.events("attempt-started");
    expect(second?.content["scenarioHash"]).toBe(first?.content["scenarioHash"]);
    const bytes = bench.parts.records?.logReader.document(String(first?.content["scenarioHash"]));
    expect(JSON.parse(Buffer.from(bytes ?? []).toString("utf8"))).toMatchObject({ id: "first-spur" });
    expect(bench.writing.prepare("SELECT count(*) AS n FROM document").get()).toEqual({ n: 3 });
  });

  it("knows the learner by an opaque id only", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.does("hand-in", {});
    const all = bench
      .rows()
      .map(({ bytes }) => Buffer.from(bytes).toString("utf8"))
      .join("\n");
    expect(all).not.toMatch(/Bryony|Cole|T-002|SPURWISE-DEMO/);
    expect(all).toContain('"learner":"demo-02"');
  });

  it("is enough to judge the attempt again, byte for byte, on the documents it keeps", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 1.5);
    await bench.cable("socket-1.b", "socket-2.a", 2.5);
    await bench.does("hand-in", {});
    const { attempt } = bench.view();
    const records = bench.parts.records!;
    const state = loadAttempt(attempt!.id, records.logReader.rowsOfAttempt(attempt!.id))!;
    const [start] = bench.events("attempt-started");
    const boardBytes = records.logReader.document(String(start?.content["boardHash"]));
    const board = readBoard(Buffer.from(boardBytes ?? []).toString("utf8"), "kept board");
    const makings = {
      kit: kitOfAttempt(records, state)!,
      board: board.ok ? board.value : (undefined as never),
      judge,
    };
    const again = pictureOf(makings, state.plugged, state).judged();
    const [handedIn] = bench.events("handed-in");
    expect(again.wiringHash).toBe(handedIn?.content["wiringHash"]);
    expect(JSON.stringify(again.verdict)).toBe(JSON.stringify(handedIn?.content["verdict"]));
  });

  it("is not written to while nothing happens, however long", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.clock.advance(5000);
    const before = bench.writing.prepare("SELECT total_changes() AS n").get();
    const { waitingCount } = bench.clock;
    bench.clock.advance(3600 * 1000);
    expect(bench.writing.prepare("SELECT total_changes() AS n").get()).toEqual(before);
    expect(bench.clock.waitingCount).toBe(waitingCount);
  });

  it("marks an attempt with the faults of the board, when they come and when they go", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const contact = "socket-1.a.L" as never;
    bench.port.breaks(contact, "stuck-low");
    expect(bench.view().banners).toContainEqual({
      kind: "board-fault",
      fault: "stuck-low",
      station: "socket-1",
      contacts: [contact],
      facts: {},
    });
    expect(bench.attempt().unknown).toEqual([contact]);
    bench.clock.advance(1000);
    bench.port.breaks(contact, null);
    bench.clock.advance(1000);
    bench.port.breaks(contact, "stuck-low");
    bench.port.breaks(contact, null);
    bench.clock.advance(1000);
    expect(bench.events("board-fault").map(({ content }) => (content["faults"] as object[]).length)).toEqual([
      1, 0,
    ]);
  });
});

describe("a full disk", () => {
  it("is said, refuses what could not be kept, loses nothing of what was, and the board goes on being drawn", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.clock.advance(250);
    const pages = Number(bench.writing.pragma("page_count", { simple: true }));
    bench.writing.pragma(`max_page_count = ${pages}`);
    const fill = async (): Promise<string> => {
      for (;;) {
        const code = await bench.refusal("go-to-step", { step: "plan" });
        if (code !== "done") return code;
        const back = await bench.refusal("go-to-step", { step: "wire" });
        if (back !== "done") return back;
      }
    };
    expect(await fill()).toBe("disk-full");
    expect(bench.view().banners.map(({ kind }) => kind)).toContain("disk-full");
    const { step } = bench.attempt();
    bench.port.byHand({ in: ["socket-2.a.L~socket-1.b.L".split("~").sort().join("~") as never] });
    bench.clock.advance(1000);
    expect(bench.attempt()).toMatchObject({ step, cables: [{}, {}] });

    bench.writing.pragma("max_page_count = 100000");
    bench.clock.advance(5000);
    expect(bench.view().banners.map(({ kind }) => kind)).not.toContain("disk-full");
    expect(bench.events("sensed").at(-1)).toMatchObject({
      content: { added: ["socket-1.b.L~socket-2.a.L"] },
    });
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });

  it("takes no setting of the screen away: it holds at once, the trouble is said, and it is kept once the disk may be written", async () => {
    const folder = temporaryFolder();
    const bench = await (await new TestBench({ folder }).start()).isWiring();
    const banners = (): string[] => bench.view().banners.map(({ kind }) => kind);
    const { records } = bench.parts;
    bench.writing.pragma("query_only = ON");
    expect(await bench.refusal("set-large", { isLarge: true })).toBe("done");
    expect(await bench.refusal("set-language", { language: "pl" })).toBe("done");
    expect(bench.view()).toMatchObject({ isLarge: true, language: "pl" });
    expect(banners()).toContain("disk-read-only");
    bench.clock.advance(5000);
    expect(banners()).toContain("disk-read-only");
    expect(records?.memoryReader.read()).toMatchObject({ isLarge: false, language: "en" });

    bench.writing.pragma("query_only = OFF");
    // What the log takes does not hide that the setting is not kept yet.
    await bench.does("go-to-step", { step: "plan" });
    expect(banners()).toContain("disk-read-only");
    bench.clock.advance(5000);
    expect(banners()).not.toContain("disk-read-only");
    expect(records?.memoryReader.read()).toMatchObject({ isLarge: true, language: "pl" });
  });

  it("that has room again when the bench stops still keeps what the screen was set to", async () => {
    const folder = temporaryFolder();
    const bench = await new TestBench({ folder }).start();
    bench.writing.pragma("query_only = ON");
    await bench.does("set-language", { language: "pl" });
    bench.writing.pragma("query_only = OFF");
    await bench.stop();
    expect((await new TestBench({ folder }).start()).view().language).toBe("pl");
  });
});
