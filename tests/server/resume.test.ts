import { describe, expect, it } from "vitest";
import { byBench } from "../../shared/protocol/author.ts";
import { verifyLog } from "../../server/store/verify-log.ts";
import { soon } from "./board/board-double.ts";
import { rightCables, TestBench } from "./test-bench.ts";
import { temporaryFolder } from "./temporary-folder.ts";

async function halfDone(folder: string, options = {}): Promise<TestBench> {
  const bench = await (await new TestBench({ folder, ...options }).start()).isWiring();
  for (const [from, to] of rightCables.slice(0, 2)) await bench.cable(from, to, 2.5);
  await bench.does("ask-verdict", {});
  await bench.does("ask-hint", {});
  await bench.does("set-language", { language: "pl" });
  return bench;
}

describe("after the power went", () => {
  it("the attempt on the simulated board is where it was: cables, sizes, tries, hints, person, language", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    before.clock.advance(250);
    const left = before.view();
    before.cutPower();

    const after = await new TestBench({ folder }).start();
    const { attempt, person, language } = after.view();
    expect(attempt).toEqual({ ...left.attempt, canUndo: false });
    expect({ person, language }).toEqual({ person: { name: "Bryony Cole", isGuest: false }, language: "pl" });
    expect(
      after
        .events()
        .map(({ type }) => type)
        .slice(-2),
    ).toEqual(["boot", "resumed"]);
    expect(verifyLog(after.writing)).toMatchObject({ isSound: true });
  });

  it("only what was being merged for the log is lost", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    before.clock.advance(250);
    const durable = before.attempt().cables;
    await before.cable("socket-2.b", "way-1.b");
    before.cutPower();
    const after = await new TestBench({ folder }).start();
    expect(after.attempt().cables.map(({ id }) => id)).toEqual(durable.map(({ id }) => id));
  });

  it("a coded board on which nothing was moved comes back as it was, also where the power goes again at once", async () => {
    const folder = temporaryFolder();
    const codes = [{ code: 3, csaMm2: 2.5, cores: ["brown" as const, "blue" as const, "earth" as const] }];
    const before = await (await new TestBench({ folder, codes }).start()).isWiring();
    for (const [from, to] of rightCables) await before.cable(from, to, 2.5);
    await before.does("ready", {});
    before.clock.advance(250);
    const { cables } = before.attempt();
    before.cutPower();

    for (const runMs of [0, 1, 5, 300, 500, 5000]) {
      const again = new TestBench({ folder, codes });
      again.bench.start();
      await soon();
      again.clock.advance(runMs);
      again.cutPower();
    }
    const after = await new TestBench({ folder, codes }).start();
    expect(after.events("changed-while-off")).toEqual([]);
    expect(after.attempt()).toMatchObject({ status: "ready", cables });
  });

  it("a bench that was locked comes back locked, and the work is there for its own learner only", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    await before.does("sign-out", {});
    await before.stop();
    const after = await new TestBench({ folder }).start();
    expect(after.view()).toMatchObject({ person: null, attempt: null });
    await after.does("sign-in", { by: "name", learner: "demo-03" });
    expect(after.view().attempt).toBeNull();
    expect(await after.refusal("hand-in", {})).toBe("no-attempt");
    await after.does("sign-in", { by: "name", learner: "demo-02" });
    expect(after.attempt().cables).toHaveLength(2);
  });

  it("what was moved on a real board meanwhile is an event of its own and is shown", async () => {
    const folder = temporaryFolder();
    const leads = ["L", "N", "E"].map((role) => `socket-1.a.${role}~way-1.a.${role}` as never);
    const before = await (await new TestBench({ folder, isSimulated: false }).start()).isWiring();
    before.port.byHand({ in: leads });
    await before.stop();

    const after = new TestBench({ folder, isSimulated: false });
    after.port.byHand({ in: [...leads.slice(1), "socket-1.a.L~way-1.b.L" as never] });
    await after.start();
    expect(after.events("changed-while-off")).toMatchObject([
      { content: { added: ["socket-1.a.L~way-1.b.L"], removed: ["socket-1.a.L~way-1.a.L"] } },
    ]);
    expect(after.view().banners).toContainEqual({
      kind: "changed-while-off",
      facts: { addedCount: 1, removedCount: 1, isTrainerNeeded: false },
    });
    await after.does("go-to-step", { step: "plan" });
    expect(after.view().banners.map(({ kind }) => kind)).not.toContain("changed-while-off");
  });

  it("an assessed attempt waits for a trainer: nothing of it can be done, and the screen says so", async () => {
    const folder = temporaryFolder();
    const before = await (await new TestBench({ folder }).start()).isWiring("assessed");
    await before.cable("way-1.a", "socket-1.a", 2.5);
    await before.stop();
    const after = await new TestBench({ folder }).start();
    expect(after.attempt()).toMatchObject({ say: { key: "say.trainer-confirms" }, mode: "assessed" });
    expect(after.attempt().steps.filter(({ state }) => state === "open")).toEqual([]);
    for (const [name, command] of [
      ["pull", { what: "all" }],
      ["go-to-step", { step: "plan" }],
      ["hand-in", {}],
      ["undo", {}],
    ] as const)
      expect(await after.refusal(name, command as never)).toBe("trainer-confirms");
    expect(after.attempt().cables).toHaveLength(1);
  });

  it("what was written to an older attempt meanwhile moves nobody's work", async () => {
    const folder = temporaryFolder();
    const before = await (await new TestBench({ folder }).start()).isWiring();
    await before.cable("way-1.a", "socket-1.a", 2.5);
    const olderId = before.attempt().id;
    await before.does("leave-attempt", {});
    await before.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await before.does("accept-caution", {});
    await before.does("go-to-step", { step: "wire" });
    await before.does("pull", { what: "all" });
    await before.cable("socket-1.b", "socket-2.a", 2.5);
    before.clock.advance(3000);
    const open = before.attempt();
    before.parts.records?.log.append([
      { attemptId: olderId, type: "board-fault", author: byBench, content: { faults: [] } },
      { attemptId: olderId, type: "attempt-left", author: byBench, content: { reason: "left" } },
    ]);
    await before.stop();

    const after = await new TestBench({ folder }).start();
    expect(after.attempt()).toEqual({ ...open, canUndo: false });
    expect(after.attempt().id).not.toBe(olderId);
  });

  it("an attempt that was handed in is still on the screen, and one that was left is not", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    await before.does("hand-in", {});
    await before.stop();
    const handedIn = await new TestBench({ folder }).start();
    expect(handedIn.attempt()).toMatchObject({ status: "handed-in", verdict: { isCurrent: true } });
    await handedIn.does("leave-attempt", {});
    await handedIn.stop();
    const left = await new TestBench({ folder }).start();
    expect(left.view()).toMatchObject({ attempt: null, person: { name: "Bryony Cole" } });
    expect(left.port.leads.leads).toHaveLength(6);
  });
});

describe("a disk that may only be read when the bench starts", () => {
  it("keeps the work of before, and takes it up by itself once it may be written", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    await before.stop();
    const after = new TestBench({ folder });
    after.writing.pragma("query_only = ON");
    await after.start();
    expect(after.view().attempt).toBeNull();
    expect(after.view().banners.map(({ kind }) => kind)).toContain("disk-read-only");
    expect(await after.refusal("start-attempt", { scenario: "first-spur", mode: "practice" })).toBe(
      "disk-read-only",
    );
    after.writing.pragma("query_only = OFF");
    after.clock.advance(5000);
    expect(after.attempt().cables).toHaveLength(2);
    expect(after.view().banners.map(({ kind }) => kind)).not.toContain("disk-read-only");
  });
});

describe("a board that is lost", () => {
  it("is said at once, its commands are refused, and it goes on by itself when it is back", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await bench.cable("way-1.a", "socket-1.a", 2.5);
    bench.clock.advance(250);
    const before = bench.rows().length;
    await bench.port.dies();
    expect(bench.view()).toMatchObject({
      state: "no-board",
      noBoard: { key: "no-board.scanner-stopped" },
      banners: [{ kind: "board-lost" }, { kind: "board-simulated" }],
    });
    for (const [name, command] of [
      ["pull", { what: "all" }],
      ["ask-verdict", {}],
      ["ready", {}],
      ["hand-in", {}],
    ] as const)
      expect(await bench.refusal(name, command as never)).toBe("no-board");
    bench.clock.advance(500);
    await soon();
    bench.clock.advance(1000);
    expect(bench.view().state).toBe("ready");
    expect(bench.attempt().cables).toHaveLength(1);
    expect(bench.rows()).toHaveLength(before);
  });

  it("with its chain cut is drawn as it was, judged as unknown, and no size ends", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
    await bench.does("ask-verdict", {});
    bench.port.cutsChain();
    bench.clock.advance(10_000);
    expect(bench.attempt().cables.map(({ csaMm2 }) => csaMm2)).toEqual([2.5, 2.5, 2.5, 2.5]);
    expect(bench.attempt().verdict).toMatchObject({ isCurrent: false });
    await bench.does("ask-verdict", {});
    expect(bench.attempt().verdict).toMatchObject({ proposal: "cannot-say", findings: [] });
    expect(bench.events("sensed").at(-1)).toMatchObject({ content: { added: [], removed: [] } });
  });

  it("whose chain is cut when the bench starts lets nobody begin anew over the work that is to come back", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    await before.stop();
    const after = new TestBench({ folder });
    after.port.cutsChain();
    await after.start();
    expect(await after.refusal("start-attempt", { scenario: "first-spur", mode: "practice" })).toBe(
      "no-board",
    );
    after.port.cutsChain(false);
    after.atRest();
    expect(after.attempt().cables).toHaveLength(2);
  });

  it("whose chain is cut when the bench starts does not pass for one that was cleared meanwhile", async () => {
    const folder = temporaryFolder();
    const before = await halfDone(folder);
    await before.stop();
    const after = new TestBench({ folder });
    after.port.cutsChain();
    await after.start();
    expect(after.view().attempt).toBeNull();
    after.port.cutsChain(false);
    after.atRest();
    expect(after.attempt().cables).toHaveLength(2);
    expect(after.events("changed-while-off")).toEqual([]);
  });
});
