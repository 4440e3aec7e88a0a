import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import { problemLine } from "../../shared/reading/problem.ts";
import { judge } from "../../shared/rules/judge.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { answerMisses, type Judge } from "../../shared/scenario/answer-misses.ts";
import { askProblems } from "../../shared/scenario/ask-problems.ts";
import { lacking } from "../../shared/scenario/fits-board.ts";
import { readScenario } from "../../shared/scenario/read-scenario.ts";
import { ruleMap } from "../../shared/scenario/rules-taught.ts";
import type { Scenario } from "../../shared/scenario/scenario.schema.ts";
import { jsonFilesIn, readFileWith } from "../files/read-file-with.ts";
import { folders } from "../folders.ts";
import { solveScenario } from "./solve-scenario.ts";

export interface ScenarioCheck {
  /** One line a scenario that is right. */
  passed: string[];
  /** One line a miss, with file, field and form. */
  missed: string[];
  /** One line a problem of a file that cannot be used. */
  unusable: string[];
  /** One line a rule: the scenarios that teach it. */
  taught: string[];
}

/**
 * Checks scenario files on every board they fit: model answers must be met, wrong answers must give exactly their
 * stated findings, however the same wiring is written. A scenario that fits no board is a miss, and so is one whose
 * text asks for what no requirement holds, or one that no search solves on the first board that it fits.
 */
export function checkScenarioFiles(
  scenarioFiles: string[],
  boardFiles: string[],
  judgeBy: Judge = judge,
  solve?: typeof solveScenario,
): ScenarioCheck {
  const check: ScenarioCheck = { passed: [], missed: [], unusable: [], taught: [] };
  const scenarios: Scenario[] = [];
  const boards: BoardDescription[] = [];
  for (const file of boardFiles) {
    const read = readFileWith(file, readBoard);
    if (read.ok) boards.push(read.value);
    else check.unusable.push(...read.problems.map(problemLine));
  }
  for (const file of scenarioFiles) {
    const read = readFileWith(file, readScenario);
    if (!read.ok) {
      check.unusable.push(...read.problems.map(problemLine));
      continue;
    }
    const scenario = read.value;
    scenarios.push(scenario);
    const { misses, passed } = checkScenario(scenario, boards, judgeBy, solve);
    check.missed.push(...misses.map((miss) => (miss.startsWith("  ") ? miss : `${file}: ${miss}`)));
    check.passed.push(...passed);
  }
  for (const [rule, ids] of ruleMap(scenarios)) check.taught.push(`${rule}: ${ids.join(", ") || "none"}`);
  return check;
}

/** What is amiss with a scenario on the boards that it fits, a line each; one line where nothing is. */
export function checkScenario(
  scenario: Scenario,
  boards: readonly BoardDescription[],
  judgeBy: Judge,
  solve?: typeof solveScenario,
): Pick<ScenarioCheck, "passed"> & { misses: string[] } {
  const judgeOnce = oncePerText(judgeBy);
  const fitting = boards.filter((board) => lacking(scenario, board).length === 0);
  const [board] = fitting;
  if (!board) {
    const lacks = boards.map((one) => `  ${one.id} lacks ${JSON.stringify(lacking(scenario, one))}`);
    return { passed: [], misses: ["stations: fits none of the boards", ...lacks] };
  }
  const misses = [
    ...askProblems(scenario, judgeOnce, fitting).map(
      ({ field, message, remedy }) => `${field}: ${message}. ${remedy}`,
    ),
    ...fitting.flatMap((one) =>
      answerMisses(scenario, judgeOnce, one).map(
        ({ field, form, expected, actual }) =>
          `${field}: expected ${expected}; found ${actual} (${form}, ${one.id})`,
      ),
    ),
  ];
  const solved = solve?.(scenario, judgeOnce, board);
  if (solved && "amiss" in solved) misses.push(`requirements: ${solved.amiss} (${board.id})`);
  if (misses.length > 0) return { passed: [], misses };
  const right =
    `${scenario.id}: ${scenario.modelAnswers.length} model and ${scenario.wrongAnswers.length} wrong answers ` +
    `right on ${fitting.map(({ id }) => id).join(", ")}${solved && "said" in solved ? `; ${solved.said}` : ""}`;
  return { passed: [right], misses };
}

/** Judges what is the very same wiring once: boards that differ in their lines alone give the same ones. */
function oncePerText(judgeBy: Judge): Judge {
  const known = new Map<string, Verdict>();
  return (wiring) => {
    const text = JSON.stringify(wiring);
    const verdict = known.get(text) ?? judgeBy(wiring);
    known.set(text, verdict);
    return verdict;
  };
}

/**
 * `check-scenarios [file ...]`: checks the named scenario files, or all that are shipped and which of them teach each rule. Exit code 0 where every
 * answer gets the verdict it must have, 1 on a miss, 2 where a file cannot be used; the place is named.
 */
export async function run(args: string[]): Promise<number> {
  const option = args.find((arg) => arg.startsWith("-"));
  if (option !== undefined) {
    console.error(`check-scenarios: "${option}" is not known. Name scenario files, or nothing for all.`);
    return 2;
  }
  const files = args.length > 0 ? args : jsonFilesIn(folders.scenarios);
  const { passed, missed, unusable, taught } = checkScenarioFiles(
    files,
    jsonFilesIn(folders.boards),
    judge,
    solveScenario,
  );
  for (const line of passed) console.log(line);
  if (args.length === 0) console.log(["Each rule, and what teaches it:", ...taught].join("\n  "));
  for (const line of [...missed, ...unusable]) console.error(line);
  console.log(`${passed.length} of ${files.length} scenarios right.`);
  return unusable.length > 0 ? 2 : missed.length > 0 || files.length === 0 ? 1 : 0;
}
