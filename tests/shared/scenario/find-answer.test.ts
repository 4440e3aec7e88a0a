import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { solveScenario } from "../../../server/commands/solve-scenario.ts";
import { readBoardFile } from "../../../server/library.ts";
import { stationId } from "../../../shared/board/ids.ts";
import { judge } from "../../../shared/rules/judge.ts";
import { cannotBeMet } from "../../../shared/scenario/cannot-be-met.ts";
import { findAnswer } from "../../../shared/scenario/find-answer.ts";
import { fitsBoard } from "../../../shared/scenario/fits-board.ts";
import { readScenario } from "../../../shared/scenario/read-scenario.ts";
import type { Scenario } from "../../../shared/scenario/scenario.schema.ts";
import { strip } from "../../../shared/scenario/strip.ts";
import { toWiring } from "../../../shared/scenario/to-wiring.ts";
import { someOf } from "../../breadth.ts";
import { testDepth } from "../../depth.ts";

const boards = ["small", "workshop"].map((id) => readBoardFile(`hardware/boards/${id}.json`).board);
const scenarios = readdirSync("scenarios")
  .filter((file) => file.endsWith(".json"))
  .flatMap((file) => {
    const read = readScenario(readFileSync(`scenarios/${file}`, "utf8"), file);
    return read.ok ? [read.value] : [];
  });
const boardFor = (scenario: Scenario) => {
  const board = boards.find((one) => fitsBoard(scenario, one));
  if (!board) throw new Error(`no board for ${scenario.id}`);
  return board;
};

// One of each make: a spur, a radial in the right size, a ring, lamps behind switches, a unit put in before a boiler.
const usual = ["first-spur", "far-shed", "ring-and-spurs", "lights-at-the-rose", "boiler"];
const cases = scenarios.filter(({ id }) => testDepth > 1 || usual.includes(id));

/** With the answers gone and every wrong answer for a model: who looks at them cannot find the way. */
const withoutAnswers = (scenario: Scenario): Scenario => ({
  ...scenario,
  modelAnswers: scenario.wrongAnswers.map(({ built }) => built),
});

describe("a wiring that a task asks for", () => {
  it.each(someOf(cases, 5).map((scenario) => ({ task: scenario.id, scenario })))(
    "is found without a look at its answers, and right through its wiring file: $task",
    ({ scenario }) => {
      const solved = solveScenario(withoutAnswers(scenario), judge, boardFor(scenario));
      expect("said" in solved ? solved.said : solved.amiss).toMatch(/^solved by search with \d+ cables/);
    },
  );

  it("keeps the cables that are to stay", () => {
    const scenario = scenarios.find(({ id }) => id === "boiler");
    if (!scenario) throw new Error("no task");
    const board = boardFor(scenario);
    const { built, notMet } = findAnswer(strip(scenario), judge, board);
    expect(notMet).toEqual([]);
    if (!built) throw new Error("nothing found");
    const { requirements } = judge(toWiring({ scenario, board, built }));
    const kept = requirements.filter(({ requirement }) => requirement.kind === "kept");
    expect(kept.map(({ answer }) => answer)).toEqual(kept.map(() => "met"));
    expect(kept).not.toEqual([]);
  });
});

describe("requirements that cannot be met together", () => {
  const scenario = scenarios.find(({ id }) => id === "first-spur");
  if (!scenario) throw new Error("no task");

  it("are named as the two that are at odds: one socket outlet in the ring and on a spur from it", () => {
    const served = scenario.requirements.filter(({ kind }) => kind === "served");
    const stations = [stationId("socket-2")];
    const asked: Scenario = {
      ...scenario,
      requirements: [...served, { kind: "in-ring", stations }, { kind: "unfused-spur", stations }],
    };
    const solved = solveScenario(asked, judge, boardFor(scenario));
    expect(solved).toEqual({
      amiss:
        "no wiring of whole cables meets these together, every one was judged: " +
        "requirements[1] (in-ring), requirements[2] (unfused-spur)",
    });
  });

  it("are said to be none that was found where there are too many wirings to judge every one", () => {
    const large = scenarios.find(({ id }) => id === "two-circuits");
    if (!large) throw new Error("no task");
    const verdict = judge(toWiring({ scenario: large, built: large.asFound }));
    const solved = solveScenario(large, () => verdict, boardFor(large));
    expect("amiss" in solved && solved.amiss).toMatch(/^no wiring was found.* \(4000 were judged\)$/);
  });

  it("are told as less than all: without any one of them it can be done", () => {
    const kinds = ["served", "shape", "device", "kept"] as const;
    const requirements = kinds.map((kind) => ({ kind })) as unknown as Scenario["requirements"];
    const both = (asked: Scenario["requirements"]): boolean =>
      asked.some(({ kind }) => kind === "shape") && asked.some(({ kind }) => kind === "kept");
    expect(cannotBeMet({ requirements }, (asked) => !both(asked))).toEqual([1, 3]);
  });

  it("are none where nothing can be done at all", () => {
    expect(cannotBeMet(scenario, () => false)).toEqual([]);
  });
});
