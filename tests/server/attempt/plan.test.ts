import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { planSheetOf } from "../../../server/attempt/plan-sheet.ts";
import { readBoardFile, scenarioKit } from "../../../server/library.ts";
import type { PlanQuestion } from "../../../shared/protocol/commands.schema.ts";
import { TestBench } from "../test-bench.ts";

function kitOf(task: string) {
  const kit = scenarioKit(readFileSync(`scenarios/${task}.json`), task);
  if ("problems" in kit) throw new Error(JSON.stringify(kit.problems));
  return kit;
}

function check(task: string, question: PlanQuestion, answer: number, answers = {}) {
  const item = planSheetOf(kitOf(task)).questions.find((one) => one.question === question);
  return item?.check(answer, { ...answers, [question]: answer });
}

describe("the design worksheet", () => {
  it.each([
    // 2 000 + 1 500 + 700 W at 230 V.
    {
      task: "build-a-radial",
      question: "designCurrentA",
      answer: 18.3,
      isRight: true,
      why: "designCurrentA",
    },
    {
      task: "build-a-radial",
      question: "designCurrentA",
      answer: 19.5,
      isRight: false,
      why: "designCurrentA",
    },
    // Ib <= In (BS 7671 433.1.1).
    {
      task: "build-a-radial",
      question: "deviceRatingA",
      answer: 16,
      isRight: false,
      why: "device-below-load",
    },
    { task: "build-a-radial", question: "deviceRatingA", answer: 20, isRight: true, why: "deviceRatingA" },
    // In <= Iz (BS 7671 433.1.1): no size there is to fit carries 32 A as these cables are run.
    {
      task: "build-a-radial",
      question: "deviceRatingA",
      answer: 32,
      isRight: false,
      why: "device-above-cable",
    },
    { task: "build-a-radial", question: "csaMm2", answer: 1.5, isRight: false, why: "size-too-small" },
    { task: "build-a-radial", question: "csaMm2", answer: 2.5, isRight: true, why: "csaMm2" },
    { task: "build-a-radial", question: "csaMm2", answer: 4, isRight: true, why: "size-larger" },
    // A ring's cable carries 20 A at least, whatever the 32 A device (BS 7671 433.1.204).
    {
      task: "first-spur",
      question: "tabulatedCurrentA",
      answer: 20,
      isRight: true,
      why: "tabulatedCurrentA",
    },
    {
      task: "first-spur",
      question: "tabulatedCurrentA",
      answer: 32,
      isRight: false,
      why: "tabulatedCurrentA",
    },
    // 2.5 mm² above a ceiling in more than 100 mm of insulation carries 17 A, 4 mm² 22 A (BS 7671 Table 4D5, method 101).
    { task: "loft-insulation", question: "csaMm2", answer: 2.5, isRight: false, why: "size-too-small" },
    { task: "loft-insulation", question: "csaMm2", answer: 4, isRight: true, why: "csaMm2" },
    // A boiler's controls are behind 3 A (common practice, no source).
    { task: "boiler", question: "fuseRatingA", answer: 13, isRight: false, why: "fuseRatingA" },
    { task: "boiler", question: "fuseRatingA", answer: 3, isRight: true, why: "fuseRatingA" },
  ] as const)(
    "of $task: $answer for $question is right: $isRight, because of $why",
    ({ task, question, answer, isRight, why }) => {
      expect(check(task, question, answer)).toMatchObject({ isRight, reason: { key: `plan.reason.${why}` } });
    },
  );

  it("goes on from the device that was answered, where that can be", () => {
    // 1.5 mm² under up to 100 mm of insulation carries 16 A (BS 7671 Table 4D5, method 100): enough for 16 A only.
    expect(check("branching-radial", "csaMm2", 1.5, { deviceRatingA: 16 })).toMatchObject({ isRight: true });
    expect(check("branching-radial", "csaMm2", 1.5, { deviceRatingA: 20 })).toMatchObject({ isRight: false });
    expect(check("branching-radial", "tabulatedCurrentA", 20, { deviceRatingA: 20 })).toMatchObject({
      isRight: true,
    });
  });

  it("compares Ib, In and Iz; of a ring Iz with the 20 A it must have", () => {
    const barsOf = (task: string, answers: object) =>
      planSheetOf(kitOf(task))
        .bars(answers)
        .map(({ name, currentA }) => [name, currentA]);
    expect(barsOf("build-a-radial", { designCurrentA: 18.3, deviceRatingA: 20, csaMm2: 2.5 })).toEqual([
      ["Ib", 18.3],
      ["In", 20],
      ["Iz", 21],
    ]);
    expect(barsOf("first-spur", { csaMm2: 2.5 })).toEqual([
      ["Iz", 27],
      ["least", 20],
    ]);
  });

  it("does not ask which fuse where there are two to choose, nor for a device that is given", () => {
    const asked = (task: string) => planSheetOf(kitOf(task)).questions.map(({ question }) => question);
    expect(asked("sun-room")).not.toContain("fuseRatingA");
    expect(asked("first-spur")).toEqual(["designCurrentA", "tabulatedCurrentA", "csaMm2"]);
  });
});

describe("answers to the worksheet", () => {
  async function planning(mode: "practice" | "assessed") {
    const { board, bytes } = readBoardFile("hardware/boards/workshop.json");
    const bench = new TestBench({
      scenarios: [kitOf("build-a-radial")],
      parts: { board, boardBytes: bytes },
    }).start();
    await bench.does("sign-in", { by: "badge", badge: "SPURWISE-DEMO-01" });
    await bench.does("start-attempt", { scenario: "build-a-radial", mode });
    await bench.does("accept-caution", {});
    for (const [question, answer] of [
      ["designCurrentA", 18.3],
      ["deviceRatingA", 20],
      ["tabulatedCurrentA", 20],
      ["csaMm2", 1.5],
    ] as const)
      await bench.does("answer-plan", { question, answer });
    return bench;
  }

  it("are checked at once in practice, with the reason and the bars, and are in the log", async () => {
    const bench = await planning("practice");
    const { questions, bars } = bench.attempt().plan;
    expect(questions.map(({ result }) => result?.isRight)).toEqual([true, true, true, false]);
    expect(bars?.map(({ name }) => name)).toEqual(["Ib", "In", "Iz"]);
    expect(bench.attempt().steps.find(({ step }) => step === "plan")?.state).toBe("now");
    await bench.does("go-to-step", { step: "wire" });
    expect(bench.attempt().steps.find(({ step }) => step === "plan")?.state).toBe("done");
    expect(bench.events("plan-answered").map(({ content }) => content["answer"])).toEqual([
      18.3, 20, 20, 1.5,
    ]);
    expect(await bench.refusal("answer-plan", { question: "fuseRatingA", answer: 3 })).toBe("not-a-question");
  });

  it("are kept but not checked in assessed work", async () => {
    const bench = await planning("assessed");
    const { questions, bars } = bench.attempt().plan;
    expect(bars).toBeUndefined();
    expect(questions.map(({ answer, result }) => [answer, result])).toEqual(
      [18.3, 20, 20, 1.5].map((answer) => [answer, undefined]),
    );
  });
});
