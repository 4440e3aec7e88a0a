import { describe, expect, it } from "vitest";
import type { EntryId } from "../../shared/board/ids.ts";
import { firstSpur, leadsOf, TestBench } from "./test-bench.ts";

const unsaved = (bench: TestBench): string[] =>
  bench
    .attempt()
    .cables.filter(({ isUnsaved }) => isUnsaved)
    .map(({ id }) => id);

describe("a lead that is shown", () => {
  it("is marked until it is on the disk, and the screen is told when it is", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.clock.advance(250);
    expect(unsaved(bench)).toEqual([]);
    await bench.does("plug-cable", { entryA: "socket-1.b" as EntryId, entryB: "socket-2.a" as EntryId });
    expect(unsaved(bench)).toEqual(["socket-1.b~socket-2.a"]);
    const { revision } = bench.view();
    const rows = bench.rows().length;
    bench.clock.advance(250);
    expect(bench.rows().length).toBeGreaterThan(rows);
    expect(unsaved(bench)).toEqual([]);
    expect(bench.view().revision).toBeGreaterThan(revision);
  });

  it("and not marked is there after any power cut: what is lost was marked", async () => {
    for (let atMs = 0; atMs <= 400; atMs += 25) {
      const before = await (await new TestBench().start()).isWiring();
      await before.does("plug-cable", { entryA: "way-1.a" as EntryId, entryB: "socket-1.a" as EntryId });
      before.clock.advance(atMs);
      const shown = before.attempt().cables.map(({ id }) => id);
      const marked = new Set(unsaved(before));
      before.cutPower();
      const after = await new TestBench({ folder: before.folder }).start();
      const kept = new Set(after.attempt().cables.map(({ id }) => id));
      expect([atMs, shown.filter((id) => !kept.has(id) && !marked.has(id))]).toEqual([atMs, []]);
    }
  });

  it("stays marked while the disk takes nothing", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    bench.writing.pragma("query_only = ON");
    await bench.bench.handle(
      "plug-cable",
      { entryA: "way-1.a" as EntryId, entryB: "socket-1.a" as EntryId },
      bench.bench.core.session,
    );
    bench.clock.advance(3000);
    expect(unsaved(bench)).toEqual(["socket-1.a~way-1.a"]);
    bench.writing.pragma("query_only = OFF");
    bench.clock.advance(5000);
    expect(unsaved(bench)).toEqual([]);
  });
});

describe("assessed work on the board", () => {
  const found = firstSpur({
    isExistingCircuit: true,
    asFound: { cables: [{ from: "way-1.a", to: "socket-1.a", csaMm2: 2.5 }] } as never,
  });

  async function atPlan(scenarios = [firstSpur()], leads: string[] = []): Promise<TestBench> {
    const bench = await new TestBench({ scenarios, isSimulated: false }).start();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    bench.port.byHand({ in: leads as never[] });
    bench.atRest();
    await bench.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
    await bench.does("accept-caution", {});
    if (bench.attempt().step === "make-dead") await bench.does("declare-dead", {});
    return bench;
  }

  it("begins on a board that is clear, and the log has that the scan found it so", async () => {
    const bench = await atPlan([firstSpur()], leadsOf("way-1.a", "socket-1.a"));
    for (const step of ["wire", "test", "hand-in"] as const)
      expect(await bench.refusal("go-to-step", { step })).toBe("board-first");
    bench.port.byHand({ out: leadsOf("way-1.a", "socket-1.a").slice(1) });
    bench.atRest();
    expect(await bench.refusal("go-to-step", { step: "wire" })).toBe("board-first");
    bench.port.byHand({ out: leadsOf("way-1.a", "socket-1.a") });
    bench.atRest();
    await bench.does("go-to-step", { step: "wire" });
    expect(bench.events("step-entered")).toMatchObject([
      { content: { step: "wire", begunOn: "clear-board" } },
    ]);
    bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
    bench.atRest();
    await bench.does("go-to-step", { step: "plan" });
    await bench.does("go-to-step", { step: "wire" });
  });

  it("begins on what was found there, every lead of it and no other", async () => {
    const all = leadsOf("way-1.a", "socket-1.a");
    const bench = await atPlan([found], all.slice(1));
    const answer = await bench.bench.handle("go-to-step", { step: "wire" }, bench.bench.core.session);
    expect(answer).toEqual({ ok: false, code: "board-first", facts: { outCount: 0, inCount: 1 } });
    bench.port.byHand({ in: all });
    bench.atRest();
    await bench.does("go-to-step", { step: "wire" });
    expect(bench.events("step-entered").at(-1)).toMatchObject({ content: { begunOn: "as-found" } });
  });

  it("is held to that alone: practice begins on any board", async () => {
    const bench = await new TestBench({ isSimulated: false }).start();
    bench.port.byHand({ in: leadsOf("way-1.a", "socket-1.a") });
    bench.atRest();
    await bench.isWiring();
    expect(bench.events("step-entered")).toMatchObject([{ content: { step: "wire" } }]);
  });
});

describe("a scanner that does not answer", () => {
  it("holds what needs the board, and nothing else: the screen can still be set, and whoever is there can go", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    const { port } = bench;
    const request = port.request.bind(port);
    let answer: (() => void) | undefined;
    port.request = (asked) => new Promise((resolve) => (answer = () => void request(asked).then(resolve)));
    const { session } = bench.bench.core;
    const held = bench.bench.handle(
      "plug",
      { contactA: "way-1.a.L", contactB: "socket-1.a.L" } as never,
      session,
    );
    const behind = bench.bench.handle("ask-hint", {}, session);
    let isBehindDone = false;
    void behind.then(() => (isBehindDone = true));
    await bench.does("set-language", { language: "pl" });
    await bench.does("answer-plan", { question: "csaMm2", answer: 2.5 });
    await bench.does("sign-out", {});
    expect(bench.view()).toMatchObject({ language: "pl", person: null });
    expect(isBehindDone).toBe(false);
    answer?.();
    expect(await held).toEqual({ ok: true });
    expect(await behind).toMatchObject({ ok: false, code: "not-signed-in" });
  });
});
