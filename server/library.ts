import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { BoardDescription } from "../shared/board/board.schema.ts";
import { readBoard } from "../shared/board/read-board.ts";
import type { StationId } from "../shared/board/ids.ts";
import { type Problem, problemLine } from "../shared/protocol/problem.ts";
import { type PlannedRoute, routes } from "../shared/scenario/plan-route.ts";
import { readScenario } from "../shared/scenario/read-scenario.ts";
import type { Scenario, StrippedScenario } from "../shared/scenario/scenario.schema.ts";
import { strip } from "../shared/scenario/strip.ts";

/** A scenario with all that is made from it once: what the bench may see of it, and the ways on its plan. */
export interface ScenarioKit {
  scenario: Scenario;
  stripped: StrippedScenario;
  /** The file as it stands, kept in the log's store so that an attempt can be judged again years later. */
  bytes: Uint8Array;
  routeBetween: (a: StationId, b: StationId) => PlannedRoute | undefined;
}

export interface BoardFile {
  board: BoardDescription;
  bytes: Uint8Array;
}

/** A file that the bench cannot work without is unusable: all that is wrong with it, a line each. */
export class UnusableFileError extends Error {
  readonly code = "unusable-file";
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(problemLine).join("\n"));
    this.name = "UnusableFileError";
  }
}

/** The kit of a scenario read from the bytes of its file, or what is wrong with it. */
export function scenarioKit(bytes: Uint8Array, fileName: string): ScenarioKit | { problems: Problem[] } {
  const read = readScenario(Buffer.from(bytes).toString("utf8"), fileName);
  if (!read.ok) return { problems: read.problems };
  const scenario = read.value;
  return { scenario, stripped: strip(scenario), bytes, routeBetween: routes(scenario.plan) };
}

/**
 * Every scenario of a folder by its id, in the order of level and id. A file that cannot be used is left out and
 * said, line by line, to `note`; it never takes the bench down.
 */
export function readScenarios(folder: string, note: (line: string) => void): Map<string, ScenarioKit> {
  const kits = readdirSync(folder)
    .filter((file) => file.endsWith(".json"))
    .flatMap((file) => {
      const kit = scenarioKit(readFileSync(join(folder, file)), file);
      if (!("problems" in kit)) return [kit];
      kit.problems.forEach((problem) => note(problemLine(problem)));
      return [];
    });
  kits.sort((a, b) => a.scenario.level - b.scenario.level || (a.scenario.id < b.scenario.id ? -1 : 1));
  return new Map(kits.map((kit) => [kit.scenario.id, kit]));
}

/**
 * Reads a board description.
 *
 * @throws UnusableFileError with every problem, by file and field; also where the file is not there.
 */
export function readBoardFile(path: string): BoardFile {
  const fileName = basename(path);
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch {
    throw new UnusableFileError([
      {
        file: path,
        field: "the whole file",
        message: "there is no such board description",
        remedy: "Set SPURWISE_BOARD to the id of a board in hardware/boards or to the path of a description",
      },
    ]);
  }
  const read = readBoard(Buffer.from(bytes).toString("utf8"), fileName);
  if (!read.ok) throw new UnusableFileError(read.problems);
  return { board: read.value, bytes };
}
