import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { BoardDescription } from "../shared/board/board.schema.ts";
import { readBoard } from "../shared/board/read-board.ts";
import { byId, type StationId } from "../shared/board/ids.ts";
import { type Problem, problemLine } from "../shared/reading/problem.ts";
import { type PlannedRoute, routes } from "../shared/scenario/plan-route.ts";
import { readDraft } from "../shared/scenario/read-draft.ts";
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
  /** It is still being made: it can be wired and tried in practice, and counts for nobody. */
  isDraft?: true;
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

/**
 * The kit of a scenario read from the bytes of its file, or what is wrong with it. What the log kept may have been a
 * scenario in the making; what is offered as a file has to be whole (`readScenario`).
 */
export function scenarioKit(
  bytes: Uint8Array,
  fileName: string,
  reader: typeof readScenario = readDraft,
): ScenarioKit | { problems: Problem[] } {
  const read = reader(Buffer.from(bytes).toString("utf8"), fileName);
  if (!read.ok) return { problems: read.problems };
  const scenario = read.value;
  return { scenario, stripped: strip(scenario), bytes, routeBetween: routes(scenario.plan) };
}

/** The order in which scenarios are offered: by level, then by id. */
export const inOrder = ({ scenario: a }: ScenarioKit, { scenario: b }: ScenarioKit): number =>
  a.level - b.level || byId(a.id, b.id);

/** The scenarios a bench offers, in the order of level and id. */
export interface ScenarioLibrary {
  kits: ReadonlyMap<string, ScenarioKit>;
  /** False while files are still being read. */
  isRead: boolean;
}

/**
 * Reads the scenarios of a folder one file at a time, with the rest of the program between them: a bench listens
 * before it has read all its tasks. A file that cannot be used is left out and said, line by line, to `note`; it
 * never takes the bench down.
 */
export class ScenarioFolder implements ScenarioLibrary {
  readonly #folder: string;
  readonly #note: (line: string) => void;
  readonly #read: ScenarioKit[] = [];
  kits: ReadonlyMap<string, ScenarioKit> = new Map();
  isRead = false;

  constructor(folder: string, note: (line: string) => void) {
    this.#folder = folder;
    this.#note = note;
  }

  /** Done when every file has been read or `isStopped` says that nobody waits any more. */
  async read(isStopped: () => boolean = () => false): Promise<void> {
    for (const file of readdirSync(this.#folder).sort()) {
      await new Promise((resolve) => setImmediate(resolve));
      if (isStopped()) return;
      if (file.endsWith(".json")) this.#readFile(file);
    }
    this.#read.sort(inOrder);
    this.kits = new Map(this.#read.map((kit) => [kit.scenario.id, kit]));
    this.isRead = true;
  }

  #readFile(file: string): void {
    const kit = scenarioKit(readFileSync(join(this.#folder, file)), file, readScenario);
    if ("problems" in kit) kit.problems.forEach((problem) => this.#note(problemLine(problem)));
    else this.#read.push(kit);
  }
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
