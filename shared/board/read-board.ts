import type { Read } from "../reading/problem.ts";
import { readWith } from "../reading/read-json.schema.ts";
import { boardProblems } from "./board-problems.ts";
import { type BoardDescription, boardSchema } from "./board.schema.ts";

/** Reads a board description, text or parsed; gives it or every problem with file, field and remedy. */
export const readBoard = (input: unknown, fileName: string): Read<BoardDescription> =>
  readWith(boardSchema, input, fileName, boardProblems);
