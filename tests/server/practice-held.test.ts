import { describe, expect, it } from "vitest";
import { answers, benchWithWork, byStaff, clearBoard } from "./desk/assessed-work.ts";
import { TestBench } from "./test-bench.ts";

const practise = (bench: TestBench): Promise<string> =>
  bench.refusal("start-attempt", { scenario: "first-spur", mode: "practice" });

/** Decides on an attempt, seals it and lets the learner see it. */
async function release(bench: TestBench, attempt: string): Promise<void> {
  for (const code of [
    await byStaff(bench, "assessor", "decide", { attempt, criteria: answers(), says: "Open ring." }),
    await byStaff(bench, "assessor", "seal-decision", { attempt }),
    await byStaff(bench, "assessor", "release", { attempt }),
  ])
    expect(code).toBe("done");
}

describe("practice at a task that somebody has handed in for assessment", () => {
  it("is not offered to them until the decision is released: it would tell them what is right", async () => {
    const { bench, id } = await benchWithWork();
    clearBoard(bench);
    expect(await practise(bench)).toBe("practice-held");
    await bench.does("leave-attempt", {});
    expect(bench.view().practiceHeld).toEqual(["first-spur"]);
    expect(await practise(bench)).toBe("practice-held");
    // By their name alone they are the same person.
    await bench.does("sign-in", { by: "name", learner: "demo-02" });
    expect(await practise(bench)).toBe("practice-held");
    await release(bench, id);
    expect(bench.view().practiceHeld).toBeUndefined();
    expect(await practise(bench)).toBe("done");
  });

  it("stays open to everybody else, and is held over a restart", async () => {
    const { bench } = await benchWithWork();
    clearBoard(bench);
    await bench.does("leave-attempt", {});
    await bench.stop();
    const after = await new TestBench({ folder: bench.folder }).start();
    expect(after.view().practiceHeld).toEqual(["first-spur"]);
    expect(await practise(after)).toBe("practice-held");
    await after.does("sign-in", { by: "name", learner: "demo-03" });
    expect(after.view().practiceHeld).toBeUndefined();
    expect(await practise(after)).toBe("done");
  });

  it("is open once what was released is corrected: what is right was told before", async () => {
    const { bench, id } = await benchWithWork();
    clearBoard(bench);
    await release(bench, id);
    const corrected = { attempt: id, criteria: answers(), says: "Open ring.", correctsFor: "A slip." };
    expect(await byStaff(bench, "assessor", "decide", corrected)).toBe("done");
    await bench.does("leave-attempt", {});
    expect(await practise(bench)).toBe("done");
  });
});
