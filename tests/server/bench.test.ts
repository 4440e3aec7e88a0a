import { describe, expect, it } from "vitest";
import { verifyLog } from "../../server/store/verify-log.ts";
import { deadSequence } from "./dead-sequence.ts";
import { firstSpur, rightCables, TestBench } from "./test-bench.ts";

describe("a learner at the bench", () => {
  it("sees every cable as it is sensed, before anything is asked", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(bench.attempt().cables).toMatchObject([
      {
        id: "socket-1.a~way-1.a",
        csaMm2: 2.5,
        conductors: [{ class: "earth" }, { class: "live" }, { class: "neutral" }],
      },
    ]);
    expect(bench.attempt().verdict).toBeNull();
  });

  it("asks and reads that a ring of two with one spur has nothing to put right", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
    await bench.does("ask-verdict", {});
    const { verdict } = bench.attempt();
    expect(verdict).toMatchObject({ isCurrent: true, isHeld: false, proposal: "met", findings: [] });
    expect(verdict?.requirements.every(({ answer }) => answer === "met")).toBe(true);
    expect(verdict?.requirements.map(({ places }) => places[0]?.id)).toEqual([
      "socket-1",
      "socket-1",
      "way-1",
      "socket-1",
      "socket-3",
    ]);
  });

  it("opens one core of the ring, asks, and reads where the ring is open", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
    await bench.does("pull", {
      what: "lead",
      contactA: "socket-1.b.E" as never,
      contactB: "socket-2.a.E" as never,
    });
    await bench.does("ask-verdict", {});
    const [finding] = bench.attempt().verdict?.findings ?? [];
    expect(finding).toMatchObject({ id: expect.stringContaining("ring-open") as string, weight: "fix" });
    expect(JSON.stringify(finding?.places)).toMatch(/socket-[12]/);
    for (const sentence of [finding?.where, finding?.what, finding?.why, finding?.remedy, finding?.reference])
      expect(sentence).toMatch(/^[A-Z].*/);
  });

  it("finds both states, the verdicts and the sizes in the log, and the log is sound", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.clock.advance(250);
    await bench.does("pull", { what: "cable", cable: "socket-1.a~way-1.a" as never });
    bench.clock.advance(250);
    await bench.does("ask-verdict", {});
    const joins = ["E", "L", "N"].map((role) => `socket-1.a.${role}~way-1.a.${role}`);
    // The size was told while the last cores were still going in: what was sensed by then stands before it.
    const [line, ...others] = [joins[1], joins[0], joins[2]];
    expect(bench.events("sensed").map(({ content }) => [content["added"], content["removed"]])).toEqual([
      [[], []],
      [[line], []],
      [others, []],
      [[], joins],
    ]);
    expect(bench.events("setting")).toMatchObject([
      { content: { key: "csaMm2", value: 2.5, by: "learner" } },
    ]);
    expect(bench.events("verdict-asked")).toHaveLength(1);
    expect(verifyLog(bench.writing)).toMatchObject({ isSound: true });
  });
});

describe("acts that come in one moment", () => {
  const dead = deadSequence.map((act) => ["dead-act", act] as const);
  const orders = {
    "that have nothing to do with the board": dead,
    "of which the first looks at the board": [["go-to-step", { step: "make-dead" }] as const, ...dead],
    "of which the last looks at the board": [...dead, ["go-to-step", { step: "wire" }] as const],
  };

  it.each(Object.entries(orders))("are done in the order in which they came: those %s", async (_, sent) => {
    const asFound = { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never;
    const scenarios = [firstSpur({ isExistingCircuit: true, asFound })];
    const bench = await new TestBench({ scenarios }).start();
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("accept-caution", {});
    // A busy server reads in one go what a finger sent over some time.
    const { session } = bench.bench.core;
    const replies = await Promise.all(
      sent.map(([name, act]) => bench.bench.handle(name, act as never, session)),
    );
    expect(replies.filter(({ ok }) => !ok)).toEqual([]);
    expect(bench.attempt().dead.every(({ isDone }) => isDone)).toBe(true);
  });
});

describe("a view", () => {
  it("is made without a look at the disk, signed in or not", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    await bench.does("ask-verdict", {});
    bench.cutPower();
    expect(bench.view().attempt?.cables).toHaveLength(1);

    const locked = await new TestBench().start();
    locked.cutPower();
    expect(locked.view().learners.length).toBeGreaterThan(5);
  });
});

describe("the self-check of the board", () => {
  it("runs on an empty board only, says how far it is, and is gone when the next one starts to work", async () => {
    const bench = await new TestBench().start();
    const seen: unknown[] = [];
    bench.bench.core.onPublish(() => seen.push(bench.view().selfCheck));
    await bench.does("self-check", {});
    expect(seen).toContainEqual({ doneCount: 12, totalCount: 24, isDone: false });
    expect(bench.view().selfCheck).toEqual({ doneCount: 24, totalCount: 24, isDone: true });
    await bench.isWiring();
    expect(bench.view().selfCheck).toBeUndefined();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    expect(await bench.refusal("self-check", {})).toBe("board-not-empty");
  });
});
