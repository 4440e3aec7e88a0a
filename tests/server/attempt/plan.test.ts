import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { currentHelp, resultOf } from "../../../server/attempt/plan-help.ts";
import { planSheetOf } from "../../../server/attempt/plan-sheet.ts";
import type { PlanTask } from "../../../server/attempt/plan-task.ts";
import { readBoardFile, scenarioKit } from "../../../server/library.ts";
import type { PlanQuestion } from "../../../shared/protocol/attempt-words.ts";
import { rightCables, TestBench } from "../test-bench.ts";

function kitOf(task: string) {
  const kit = scenarioKit(readFileSync(`scenarios/${task}.json`), task);
  if ("problems" in kit) throw new Error(JSON.stringify(kit.problems));
  return kit;
}

function check(task: string, question: PlanQuestion, answer: number, answers = {}) {
  const item = planSheetOf(kitOf(task)).questions.find((one) => one.question === question);
  return item?.mark(answer, { ...answers, [question]: answer });
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
      why: "deviceRatingA",
    },
    { task: "build-a-radial", question: "deviceRatingA", answer: 20, isRight: true, why: "deviceRatingA" },
    // In <= Iz (BS 7671 433.1.1): no size there is to fit carries 32 A as these cables are run.
    {
      task: "build-a-radial",
      question: "deviceRatingA",
      answer: 32,
      isRight: false,
      why: "deviceRatingA",
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
    // 1.5 mm² clipped direct carries 20 A, yet a ring's cable is 2.5 mm² at least (BS 7671 433.1.204).
    { task: "first-spur", question: "csaMm2", answer: 1.5, isRight: false, why: "size-too-small" },
    // 2.5 mm² above a ceiling in more than 100 mm of insulation carries 17 A, 4 mm² 22 A (BS 7671 Table 4D5, method 101).
    { task: "loft-insulation", question: "csaMm2", answer: 2.5, isRight: false, why: "size-too-small" },
    { task: "loft-insulation", question: "csaMm2", answer: 4, isRight: true, why: "csaMm2" },
    // A boiler's controls are behind 3 A (common practice, no source).
    { task: "boiler", question: "fuseRatingA", answer: 13, isRight: false, why: "fuseRatingA" },
    { task: "boiler", question: "fuseRatingA", answer: 3, isRight: true, why: "fuseRatingA" },
    // 1 200 + 300 + 40 W at 230 V are 6.7 A: more than 3 A and 5 A; the fuse of an FCU is 13 A at most (BS 1363-4).
    { task: "sun-room", question: "fuseRatingA", answer: 3, isRight: false, why: "fuseRatingA" },
    { task: "sun-room", question: "fuseRatingA", answer: 5, isRight: false, why: "fuseRatingA" },
    { task: "sun-room", question: "fuseRatingA", answer: 13, isRight: true, why: "fuseRatingA" },
    // Lights behind an FCU have 3 A, or 5 A at most (common practice, no source).
    { task: "sun-room", question: "secondFuseRatingA", answer: 3, isRight: true, why: "fuseRatingA" },
    { task: "sun-room", question: "secondFuseRatingA", answer: 5, isRight: true, why: "fuse-larger" },
    { task: "sun-room", question: "secondFuseRatingA", answer: 13, isRight: false, why: "fuseRatingA" },
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

  it("says of a fuse that is too small what the load behind it takes", () => {
    expect(check("sun-room", "fuseRatingA", 5)?.relation).toEqual({
      key: "plan.reason.fuse-below-load",
      facts: { answerA: 5, loadA: 6.7 },
    });
  });

  // In order: a nudge, the relation with its numbers, the answer.
  it.each([
    {
      // 2 000 + 1 500 + 700 W.
      task: "build-a-radial",
      question: "designCurrentA",
      wrong: [10, 12, 14],
      keys: ["nudge.designCurrentA", "relation.designCurrentA", "reason.designCurrentA"],
      facts: { totalW: 4200 },
    },
    {
      task: "build-a-radial",
      question: "deviceRatingA",
      wrong: [16, 10, 6],
      keys: ["nudge.device-low", "relation.device-low", "reason.deviceRatingA"],
      facts: { answerA: 10, designCurrentA: 18.3 },
    },
    {
      // It >= In / (Ca Cg Ci), Appendix 4 section 5 of BS 7671; a ring starts from 20 A (433.1.204).
      task: "first-spur",
      question: "tabulatedCurrentA",
      wrong: [32, 30, 27],
      keys: ["nudge.tabulated-ring", "relation.tabulatedCurrentA", "reason.tabulatedCurrentA"],
      facts: { startA: 20, ca: 1, cg: 1, ci: 1 },
    },
    {
      // BS 7671 Table 4D5: 2.5 mm² by method 101 17 A, 1.5 mm² 13 A.
      task: "loft-insulation",
      question: "csaMm2",
      wrong: [1.5, 2.5],
      keys: ["nudge.csaMm2", "relation.csaMm2"],
      facts: { csaMm2: 2.5, tableA: 17, method: "101" },
    },
    {
      task: "first-spur",
      question: "csaMm2",
      wrong: [1, 1.5],
      keys: ["nudge.csaMm2", "reason.size-ring"],
      facts: { leastCsaMm2: 2.5 },
    },
    {
      task: "sun-room",
      question: "fuseRatingA",
      wrong: [3, 5],
      keys: ["nudge.fuseRatingA", "reason.fuse-below-load"],
      facts: { answerA: 5, loadA: 6.7 },
    },
  ] as const)(
    "helps with $question of $task a little more each time",
    ({ task, question, wrong, keys, facts }) => {
      const item = planSheetOf(kitOf(task)).questions.find((one) => one.question === question)!;
      const said = wrong.map(
        (answer, i) => resultOf(item, wrong.slice(0, i + 1), { [question]: answer })?.reason,
      );
      expect(said.map((reason) => reason?.key)).toEqual(keys.map((key) => `plan.${key}`));
      expect(said[1]?.facts).toMatchObject(facts);
      // No number of the answer in what comes before it.
      expect(said[0]?.facts).toEqual(question === "csaMm2" ? { method: expect.any(String) as string } : {});
    },
  );

  it("tells who works out a cooker's current to count only part of it, which adding up would not", () => {
    // On-Site Guide Table A2: the first 10 A, 30 % of the rest, 5 A for a socket outlet in the control. 8 740 W: 38 A.
    const task = { cookingW: 8740, totalW: 8740, hasSocketOutletInCookerControl: true } as PlanTask;
    expect(currentHelp(task)(38, {})).toEqual({
      nudge: { key: "plan.nudge.cooking", facts: {} },
      relation: { key: "plan.relation.cooking-outlet", facts: { fullA: 38 } },
    });
    expect(currentHelp({ ...task, hasSocketOutletInCookerControl: false })(38, {}).relation.key).toBe(
      "plan.relation.cooking",
    );
  });

  it("does not count the same wrong answer twice, and says right when it is", () => {
    const item = planSheetOf(kitOf("build-a-radial")).questions[0]!;
    expect(resultOf(item, [10, 10, 10], { designCurrentA: 10 })?.reason.key).toBe(
      "plan.nudge.designCurrentA",
    );
    expect(resultOf(item, [10, 12, 18.3], { designCurrentA: 18.3 })).toMatchObject({
      isRight: true,
      reason: { key: "plan.reason.designCurrentA" },
    });
  });

  it("compares Ib, In and Iz; of a ring its legs with Iz, and Iz with the 20 A it must have", () => {
    const barsOf = (task: string, answers: object, legsA: number[] = []) =>
      planSheetOf(kitOf(task))
        .bars(answers, legsA)
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
    expect(barsOf("first-spur", { csaMm2: 2.5 }, [7.5, 5.6])).toEqual([
      ["leg", 7.5],
      ["leg", 5.6],
      ["Iz", 27],
      ["least", 20],
    ]);
  });

  it("asks for the fuse of each FCU that is to be chosen, and not for a device that is given", () => {
    const asked = (task: string) =>
      planSheetOf(kitOf(task)).questions.map(({ question, station }) => [question, station].join(" ").trim());
    expect(asked("sun-room")).toEqual([
      "designCurrentA",
      "csaMm2",
      "fuseRatingA fcu-1",
      "secondFuseRatingA fcu-2",
    ]);
    expect(asked("first-spur")).toEqual(["designCurrentA", "tabulatedCurrentA", "csaMm2"]);
  });

  it.each(readdirSync("scenarios").filter((file) => file.endsWith(".json")))(
    "of %s asks for the cable, and for every device and fuse the learner has to choose; its model answer is right",
    (file) => {
      const kit = kitOf(file.replace(/\.json$/, ""));
      const { questions } = planSheetOf(kit);
      const toChoose = kit.scenario.stations.flatMap(({ chosen = [] }) =>
        chosen.filter((key) => key === "deviceRatingA" || key === "fuseRatingA"),
      );
      const asked = questions.map(({ question }) => question);
      expect(asked).toContain("designCurrentA");
      expect(asked).toContain("csaMm2");
      expect(asked.filter((question) => question === "deviceRatingA")).toHaveLength(
        toChoose.filter((key) => key === "deviceRatingA").length,
      );
      const fuses = questions.filter(({ station }) => station !== undefined);
      expect(fuses).toHaveLength(toChoose.filter((key) => key === "fuseRatingA").length);
      const [model] = kit.scenario.modelAnswers;
      for (const { station, mark: held } of fuses) {
        const fuseA = station && model?.settings?.[station]?.fuseRatingA;
        expect(held(fuseA ?? Number.NaN, {})).toMatchObject({ isRight: true });
      }
    },
  );
});

describe("the legs of a ring", () => {
  const answers = [
    ["designCurrentA", 13.1],
    ["tabulatedCurrentA", 20],
    ["csaMm2", 2.5],
  ] as const;

  async function planned(mode: "practice" | "assessed"): Promise<TestBench> {
    const bench = await (await new TestBench().start()).isWiring(mode);
    for (const [question, answer] of answers) await bench.does("answer-plan", { question, answer });
    await bench.does("go-to-step", { step: "plan" });
    return bench;
  }

  it("are said to come later until the ring is wired; then they share what its loads take", async () => {
    const bench = await planned("practice");
    const barsNow = () => bench.attempt().plan.bars?.map(({ name }) => name);
    expect(barsNow()).toEqual(["Iz", "least"]);
    expect(bench.attempt().plan.areLegsLater).toBe(true);
    for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
    bench.clock.advance(400);
    const { bars = [], areLegsLater } = bench.attempt().plan;
    expect(areLegsLater).toBeUndefined();
    expect(bars.map(({ name }) => name)).toEqual(["leg", "leg", "Iz", "least"]);
    // What goes in at the two ends is what the loads take (Kirchhoff): 2 800 + 150 + 60 W at 230 V.
    const legsA = bars.filter(({ name }) => name === "leg").map(({ currentA }) => currentA);
    expect(legsA.reduce((sum, legA) => sum + legA, 0)).toBeCloseTo(3010 / 230, 0);
    // The leg to socket outlet 1, where nearly all of it is taken, carries more.
    expect(Math.max(...legsA)).toBeGreaterThan(3010 / 230 / 2);
    await bench.does("pull", { what: "cable", cable: "socket-2.b~way-1.b" as never });
    bench.clock.advance(400);
    expect(barsNow()).toEqual(["Iz", "least"]);
  });

  it("are never told in assessed work", async () => {
    const bench = await planned("assessed");
    for (const [from, to] of rightCables) await bench.cable(from, to, 2.5);
    bench.clock.advance(400);
    expect(Object.keys(bench.attempt().plan)).toEqual(["questions"]);
  });
});

describe("answers to the worksheet", () => {
  async function planning(mode: "practice" | "assessed") {
    const { board, bytes } = readBoardFile("hardware/boards/workshop.json");
    const bench = await new TestBench({
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
