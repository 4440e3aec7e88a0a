import { describe, expect, it } from "vitest";
import { viewFor } from "../../../server/view/view-for.ts";
import { rightCables, TestBench } from "../test-bench.ts";

/** Hands in the ring of the small board, with its last cable left out where it is to be open. */
async function handsIn(bench: TestBench, isWhole: boolean): Promise<void> {
  for (const [from, to] of rightCables.filter((_, at) => isWhole || at !== 2))
    await bench.cable(from, to, 2.5);
  bench.atRest();
  await bench.does("ask-verdict", {});
  await bench.does("hand-in", {});
  await bench.does("leave-attempt", {});
}

describe("how a learner gets better", () => {
  it("says what they did, what they trip over, and the task to practise it with", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await handsIn(bench, false);
    const { progress } = bench.view();
    expect(progress?.goes).toMatchObject([{ scenario: "first-spur", outcome: "not-yet" }]);
    expect(progress?.rules.find(({ rule }) => rule === "ring-open")).toMatchObject({
      ...{ title: "The ring is open", trippedCount: 1, keptCount: 0, isTripping: true },
    });
    expect(progress?.next[0]).toMatchObject({ scenario: "first-spur" });
    await bench.does("set-language", { language: "pl" });
    const inPolish = bench.view().progress?.rules.find(({ rule }) => rule === "ring-open");
    expect(inPolish?.title).not.toBe("The ring is open");
  });

  it("wants no practice today of what was kept today, and is told by the log alone", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    await handsIn(bench, true);
    const { progress } = bench.view();
    expect(progress?.next).toEqual([]);
    expect(progress?.rules.length).toBeGreaterThan(0);
    expect(progress?.rules.every(({ isTripping, keptCount }) => !isTripping && keptCount === 1)).toBe(true);
    bench.cutPower();
    const after = await new TestBench({ folder: bench.folder, clock: bench.clock }).start();
    await after.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
    expect(after.view().progress).toEqual(progress);
  });

  it("is for nobody else: no guest, no other learner, nobody on the network, and not in the middle of work", async () => {
    const bench = await (await new TestBench().start()).isWiring();
    expect(bench.view().progress).toBeUndefined();
    await handsIn(bench, true);
    const shown = { bench: bench.view(), isAssessing: false, attempt: undefined };
    expect(viewFor("remote", shown).progress).toBeUndefined();
    await bench.does("sign-out", {});
    expect(bench.view().progress).toBeUndefined();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-03" });
    expect(bench.view().progress).toBeUndefined();
    await bench.does("sign-out", {});
    await bench.does("sign-in", { by: "guest" });
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    await bench.does("leave-attempt", {});
    expect(bench.view().progress).toBeUndefined();
  });

  it("leaves assessed work out: what was found in it is told by whoever decides", async () => {
    const bench = await (await new TestBench().start()).isWiring("assessed");
    await bench.cable("way-1.a", "socket-1.a", 1.5);
    bench.atRest();
    await bench.does("hand-in", {});
    await bench.does("leave-attempt", {});
    expect(bench.view().progress).toBeUndefined();
  });
});
