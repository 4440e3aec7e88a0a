import { describe, expect, it } from "vitest";
import { eventOfRow, loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { bytesOfEvent, eventOfBytes } from "../../../server/store/event-bytes.ts";
import type { EventType, LogRow } from "../../../shared/protocol/log-row.ts";
import { TestBench } from "../test-bench.ts";

const bytesOf = (text: string): Uint8Array => Buffer.from(text, "utf8");

describe("an event in the log", () => {
  it("names who did it beside what was done, and what was done is read as it was written", () => {
    const bytes = bytesOfEvent({ step: "wire" }, { by: "learner", session: "s-1" });
    expect(Buffer.from(bytes).toString("utf8")).toBe(
      '{"step":"wire","author":{"by":"learner","session":"s-1"}}',
    );
    expect(eventOfBytes(bytes)).toEqual({
      content: { step: "wire" },
      author: { by: "learner", session: "s-1" },
    });
    expect(eventOfRow({ type: "step-entered", bytes })).toEqual({
      type: "step-entered",
      content: { step: "wire" },
    });
  });

  it("is still read where somebody this program does not know did it", () => {
    const bytes = bytesOf('{"step":"wire","author":{"by":"inspector","session":"s-1"}}');
    expect(eventOfBytes(bytes)).toEqual({ content: { step: "wire" }, author: undefined });
    expect(eventOfRow({ type: "step-entered", bytes })?.content).toEqual({ step: "wire" });
  });

  it("is no event where its bytes are not JSON", () => {
    expect(eventOfRow({ type: "step-entered", bytes: bytesOf('{"step":') })).toBeUndefined();
  });

  // Rows as they were written before authors were kept; such logs lie on benches.
  const oldRows: [EventType, string][] = [
    [
      "attempt-started",
      '{"scenario":"first-spur","scenarioRevision":1,"scenarioHash":"00","board":"small","boardHash":"00","rulePackVersion":"1","softwareVersion":"0.1.0","learner":"demo-02","kind":"first","mode":"practice","isExistingCircuit":false}',
    ],
    [
      "sensed",
      '{"added":["socket-1.a.L~way-1.a.L"],"removed":[],"full":{"joins":["socket-1.a.L~way-1.a.L"],"codes":[],"unknown":[]}}',
    ],
    ["caution-accepted", "{}"],
    ["step-entered", '{"step":"wire"}'],
    ["attempt-left", '{"reason":"left"}'],
  ];

  it("of before authors were kept is read as it was", () => {
    const rows = oldRows.map(([type, text]) => ({ type, bytes: bytesOf(text) }) as LogRow);
    expect(loadAttempt("attempt-1", rows)).toMatchObject({
      id: "attempt-1",
      learner: "demo-02",
      step: "wire",
      status: "left",
      plugged: { joins: ["socket-1.a.L~way-1.a.L"] },
    });
    expect(rows.map(({ bytes }) => eventOfBytes(bytes).author)).toEqual(rows.map(() => undefined));
  });
});

describe("who did it", () => {
  it("is the learner for what is done on the screen, in one session from sign-in to sign-out, and the bench for what it senses", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("pull", { what: "all" });
    bench.clock.advance(3000);
    await bench.does("ask-verdict", {});
    const authors = bench.events().map(({ type, author }) => [type, author?.by]);
    expect(authors).toEqual([
      ["boot", "bench"],
      ["attempt-started", "learner"],
      ["sensed", "bench"],
      ["caution-accepted", "learner"],
      ["step-entered", "learner"],
      ["sensed", "bench"],
      ["setting", "learner"],
      ["sensed", "bench"],
      ["setting", "bench"],
      ["verdict-asked", "learner"],
    ]);
    const ofLearner = () =>
      bench.events().flatMap(({ author }) => (author?.by === "learner" ? [author.session] : []));
    expect(new Set(ofLearner()).size).toBe(1);
    expect(ofLearner()[0]).toMatch(/^[0-9a-f-]{36}$/);

    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "name", learner: "demo-02" });
    await bench.does("leave-attempt", {});
    expect(new Set(ofLearner()).size).toBe(2);
  });

  it("is a guest where nobody of the class list signed in", async () => {
    const bench = await new TestBench().start();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(bench.events("attempt-started")[0]?.author).toMatchObject({ by: "guest" });
  });
});
