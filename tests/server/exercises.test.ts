import { describe, expect, it } from "vitest";
import { demoPeople } from "../../server/demo/people.ts";
import { exerciseAfter } from "../../server/exercise/exercises.ts";
import { readBoardFile, scenarioKit } from "../../server/library.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import { readFileSync } from "node:fs";
import { judge } from "../../shared/rules/judge.ts";
import { makeExercise } from "../../shared/scenario/exercise/make-exercise.ts";
import { exerciseOrder } from "../../shared/scenario/exercise/exercise-words.ts";
import { soon } from "./board/board-double.ts";
import { TestBench } from "./test-bench.ts";
import { wireAnswer } from "./wire-answer.ts";

const boards = {
  small: readBoardFile("hardware/boards/small.json"),
  workshop: readBoardFile("hardware/boards/workshop.json"),
};
const badge = demoPeople[0]?.badge ?? "";

/** A bench where somebody has just handed in a practice of the first task. */
async function handedIn(): Promise<TestBench> {
  const { board, bytes } = boards.small;
  const bench = await new TestBench({ parts: { board, boardBytes: bytes } }).start();
  await bench.does("sign-in", { by: "badge", badge });
  await bench.does("start-attempt", { scenario: "first-spur", mode: "practice" });
  await bench.does("accept-caution", {});
  await bench.does("hand-in", {});
  return bench;
}

/** Begins the exercise that is offered and gives its scenario. */
async function another(bench: TestBench) {
  const id = bench.attempt().exerciseAfter;
  if (id === undefined) throw new Error("no exercise is offered");
  await bench.does("start-attempt", { scenario: id, mode: "practice" });
  const order = exerciseOrder(id);
  const scenario = order && makeExercise(order, judge);
  if (!scenario) throw new Error(`no exercise ${id}`);
  return scenario;
}

describe("another task like the one that was handed in", () => {
  it("is offered after a practice, begun by its id, solved, and followed by another", async () => {
    const bench = await handedIn();
    const scenario = await another(bench);
    expect(scenario.id).toMatch(/^exercise-ring-2-/);
    const { attempt } = bench.view();
    expect(attempt?.scenario.id).toBe(scenario.id);
    expect(attempt?.scenario.task).toEqual(scenario.task);
    expect(attempt?.exerciseAfter).toBeUndefined();
    expect(JSON.stringify(bench.view())).not.toContain(scenario.wrongAnswers[0]?.name);
    const [answer] = scenario.modelAnswers;
    if (!answer) throw new Error("no answer");
    await bench.does("accept-caution", {});
    await bench.does("go-to-step", { step: "wire" });
    await wireAnswer(bench, answer, boards.small.board);
    await soon();
    bench.atRest();
    await bench.does("hand-in", {});
    expect(bench.attempt().verdict?.proposal).toBe("met");
    const next = await another(bench);
    expect(next.id).toMatch(/^exercise-ring-2-/);
    expect(next.id).not.toBe(scenario.id);
  });

  it("stands whole in the log, so that it comes back after a start and is read for ever", async () => {
    const bench = await handedIn();
    const scenario = await another(bench);
    await bench.does("accept-caution", {});
    await bench.stop();
    const after = await new TestBench({
      folder: bench.folder,
      parts: { board: boards.small.board, boardBytes: boards.small.bytes },
    }).start();
    expect(after.attempt().scenario.id).toBe(scenario.id);
    const hash = after.bench.core.work.run?.state.scenarioHash ?? "";
    const kept = readScenario(
      Buffer.from(after.parts.records?.logReader.document(hash) ?? []).toString("utf8"),
      "kept",
    );
    expect(kept.ok && kept.value).toEqual(scenario);
  });

  it("is not for assessed work, and an id that is no exercise is no task", async () => {
    const bench = await handedIn();
    const id = bench.attempt().exerciseAfter ?? "";
    expect(await bench.refusal("start-attempt", { scenario: id, mode: "assessed" })).toBe("no-such-scenario");
    for (const scenario of ["exercise-ring-9-1", "exercise-lamp-1-1", "exercise-ring-1-zzzzzzz"])
      expect(await bench.refusal("start-attempt", { scenario, mode: "practice" })).toBe("no-such-scenario");
  });

  it("is about the same as the task, as far as the board has room, and there is none like a hunt or lights", () => {
    const after = (task: string, board: keyof typeof boards): string | undefined => {
      const kit = scenarioKit(readFileSync(`scenarios/${task}.json`), task);
      if ("problems" in kit) throw new Error(task);
      return exerciseAfter(kit, boards[board].board, "01932f5c-7a00-7000-8000-0123456789ab");
    };
    const kinds = [
      ["first-spur", "workshop", "ring-2"],
      ["ring-and-spurs", "workshop", "ring-3"],
      ["build-a-radial", "workshop", "radial-2"],
      ["loft-office", "workshop", "fused-2"],
      ["boiler", "workshop", "fused-3"],
      ["first-spur", "small", "ring-2"],
      ["ring-and-spurs", "small", "ring-2"],
    ] as const;
    for (const [task, board, kind] of kinds)
      expect(after(task, board), task).toMatch(new RegExp(`^exercise-${kind}-`));
    for (const task of ["silent-ring", "other-each-time", "lights-at-the-rose", "test-a-ring"])
      expect(after(task, "workshop"), task).toBeUndefined();
    expect(after("loft-office", "small")).toBeUndefined();
  });
});
