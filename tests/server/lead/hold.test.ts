import { describe, expect, it } from "vitest";
import type { Actor } from "../../../server/acts/actor.ts";
import { thawAlone } from "../../../server/bench/hold-bench.ts";
import type { ActMessage, ActName } from "../../../shared/protocol/acts.ts";
import { lead, TestBench } from "../test-bench.ts";

const trainer: Actor = { kind: "trainer", learner: null, session: "s-1", staff: "t-1", isRemote: true };

const byTrainer = <Name extends ActName>(bench: TestBench, name: Name, message: ActMessage<Name>) =>
  bench.bench.handle(name, message, { actor: trainer });

const bannersOf = (bench: TestBench) =>
  bench
    .view()
    .banners.filter(({ kind }) => kind !== "board-simulated")
    .map(({ kind, facts }) => ({ kind, ...facts }));

describe("a frozen bench", () => {
  it("says so and takes no act of whoever works at it, but letters, language and who stands there", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    expect(bannersOf(bench)).toEqual([{ kind: "frozen" }]);
    const before = bench.rows().length;
    expect(await bench.refusal("plug-cable", { entryA: "way-1.a", entryB: "socket-1.a" } as never)).toBe(
      "bench-frozen",
    );
    expect(await bench.refusal("go-to-step", { step: "plan" })).toBe("bench-frozen");
    expect(await bench.refusal("hand-in", {})).toBe("bench-frozen");
    expect(bench.rows()).toHaveLength(before);
    await bench.does("set-language", { language: "pl" });
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  });

  it("goes on sensing: what hands move on the board is drawn and logged", async () => {
    const bench = await (await new TestBench({ isSimulated: false }).start()).isWiring();
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    bench.port.byHand({ in: [lead("way-1.a", "socket-1.a", "L")] });
    bench.atRest();
    expect(bench.attempt().cables.map(({ id }) => id)).toEqual(["socket-1.a~way-1.a"]);
    bench.clock.advance(1000);
    expect(bench.events("sensed").at(-1)?.content["added"]).toEqual([lead("way-1.a", "socket-1.a", "L")]);
  });

  it("is thawed by who froze it; the log of the work has both, with who it was", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const { id } = bench.attempt();
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    await byTrainer(bench, "freeze-bench", { isFrozen: false });
    expect(bannersOf(bench)).toEqual([]);
    const told = { author: { by: "trainer", session: "s-1" } };
    expect(bench.events().slice(-2)).toEqual([
      { type: "bench-frozen", ...told, content: { person: "t-1" } },
      { type: "bench-thawed", ...told, content: { person: "t-1", why: "told" } },
    ]);
    expect(bench.rows().slice(-2)).toMatchObject([{ attemptId: id }, { attemptId: id }]);
    await bench.cable("way-1.a", "socket-1.a");
  });

  it("goes on by itself where nobody can be reached who could let it, and the log says why", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    thawAlone(bench.bench.core);
    thawAlone(bench.bench.core);
    expect(bannersOf(bench)).toEqual([]);
    expect(bench.events("bench-thawed")).toEqual([
      { type: "bench-thawed", author: { by: "bench", session: null }, content: { why: "lead-lost" } },
    ]);
  });

  it("is not frozen any more after a start", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    bench.cutPower();
    const again = await new TestBench({ folder: bench.folder }).start();
    expect(bannersOf(again)).not.toContainEqual({ kind: "frozen" });
  });
});

describe("the time of a group", () => {
  it("is told minute by minute, stands still while the bench is frozen, and ends nothing when it is up", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await byTrainer(bench, "set-time", { what: "set", minutes: 3 });
    expect(bannersOf(bench)).toEqual([{ kind: "time-left", minutes: 3 }]);
    let shown = 0;
    bench.bench.core.onPublish(() => (shown += 1));
    bench.clock.advance(61_000);
    expect(shown).toBeGreaterThan(0);
    expect(bannersOf(bench)).toEqual([{ kind: "time-left", minutes: 2 }]);
    await byTrainer(bench, "freeze-bench", { isFrozen: true });
    bench.clock.advance(3_600_000);
    await byTrainer(bench, "freeze-bench", { isFrozen: false });
    expect(bannersOf(bench)).toEqual([{ kind: "time-left", minutes: 2 }]);
    bench.clock.advance(120_000);
    expect(bannersOf(bench)).toEqual([{ kind: "time-up" }]);
    expect(bench.attempt().status).toBe("open");
    await bench.cable("way-1.a", "socket-1.a");
  });

  it("is made longer for one bench, also once it is up; not where none is set", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    expect(await byTrainer(bench, "set-time", { what: "more", minutes: 10 })).toMatchObject({
      code: "no-time-set",
    });
    await byTrainer(bench, "set-time", { what: "set", minutes: 1 });
    bench.clock.advance(120_000);
    await byTrainer(bench, "set-time", { what: "more", minutes: 10 });
    expect(bannersOf(bench)).toEqual([{ kind: "time-left", minutes: 10 }]);
    expect(bench.events("time-set").map(({ content }) => content)).toEqual([
      { what: "set", minutes: 1, person: "t-1" },
      { what: "more", minutes: 10, person: "t-1" },
    ]);
  });

  it("leaves nothing running on a bench that has none", async () => {
    const bench = await new TestBench().start();
    const before = bench.clock.waitingCount;
    await byTrainer(bench, "set-time", { what: "set", minutes: 5 });
    await byTrainer(bench, "set-time", { what: "set", minutes: null });
    expect(bench.clock.waitingCount).toBe(before);
  });
});

describe("a reset for the next group", () => {
  it("ends practice and keeps its record, signs out and clears the simulated board", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a");
    await byTrainer(bench, "set-time", { what: "set", minutes: 5 });
    expect(await byTrainer(bench, "reset-bench", {})).toEqual({ ok: true });
    bench.atRest();
    expect(bench.view()).toMatchObject({ person: null, attempt: null });
    expect(bannersOf(bench)).toEqual([]);
    expect(bench.bench.core.board.leads.leads).toEqual([]);
    expect(bench.events("attempt-left").at(-1)?.content).toEqual({
      reason: "ended",
      person: "t-1",
      why: "next-group",
    });
    expect(bench.events("bench-reset")).toHaveLength(1);
  });

  it("never takes assessed work away, nor the place of who waits for a check", async () => {
    const assessed = await (await new TestBench().start()).isWiring("assessed");
    expect(await byTrainer(assessed, "reset-bench", {})).toMatchObject({ code: "others-work-open" });
    expect(assessed.attempt().status).toBe("open");
    const waiting = await (await new TestBench().start()).isWiring();
    await waiting.does("ready", {});
    expect(await byTrainer(waiting, "reset-bench", {})).toMatchObject({ code: "others-work-waiting" });
  });
});
