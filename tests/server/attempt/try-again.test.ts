import { describe, expect, it } from "vitest";
import { loadAttempt } from "../../../server/attempt/load-attempt.ts";
import { firstSpur, rightCables, TestBench } from "../test-bench.ts";

/** The small board's task with one cable too small, handed in by a learner. */
async function handedIn(): Promise<TestBench> {
  const bench = await new TestBench({ scenarios: [firstSpur()] }).start();
  await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-02" });
  await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
  await bench.does("accept-caution", {});
  await bench.does("go-to-step", { step: "wire" });
  for (const [at, [from, to]] of rightCables.entries()) await bench.cable(from, to, at === 0 ? 1.5 : 2.5);
  bench.atRest();
  await bench.does("hand-in", {});
  return bench;
}

const sizes = (bench: TestBench) => bench.attempt().cables.map(({ id, csaMm2 }) => [id, csaMm2] as const);

describe("who tries a task again from its hand-in", () => {
  it("goes on from where they were: every cable with the size that was said of it, on a record of its own", async () => {
    const bench = await handedIn();
    const before = { id: bench.attempt().id, sizes: sizes(bench) };
    await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(bench.attempt().id).not.toBe(before.id);
    expect(bench.attempt()).toMatchObject({ status: "open", step: "caution" });
    expect(sizes(bench)).toEqual(before.sizes);
    expect(before.sizes.map(([, csaMm2]) => csaMm2)).toContain(1.5);
    // The record tells the same after a power cut.
    const told = loadAttempt(
      bench.attempt().id,
      bench.rows().filter(({ attemptId }) => attemptId === bench.attempt().id),
    );
    expect([...(told?.declared.values() ?? [])].map(({ value }) => value)).toContain(1.5);
  });

  it("takes nothing along into assessed work, nor from another's", async () => {
    const bench = await handedIn();
    await bench.does("start-attempt", { scenario: "first-spur", mode: "assessed" });
    expect(sizes(bench).every(([, csaMm2]) => csaMm2 === undefined)).toBe(true);
    const other = await handedIn();
    await other.does("sign-out", {});
    await other.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-03" });
    await other.does("start-attempt", { scenario: "first-spur", mode: "practice" });
    expect(sizes(other).every(([, csaMm2]) => csaMm2 === undefined)).toBe(true);
  });
});
