import { readFileSync } from "node:fs";
import { isAbsolute, join, resolve } from "node:path";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type Environment, EnvironmentError } from "../environment.ts";
import { folders } from "../folders.ts";
import { type BoardFile, readBoardFile } from "../library.ts";
import { contactsOf } from "./contacts-of.ts";

/** The board of a bench without a say: the first of these that is there. */
const usualBoards = ["workshop", "small"];

function boardPath(asked: string | undefined): string {
  const inFolder = (id: string): string => join(folders.boards, `${id}.json`);
  if (asked === undefined) {
    const found = usualBoards.find((id) => isThere(inFolder(id)));
    return inFolder(found ?? usualBoards[0] ?? "");
  }
  if (!asked.endsWith(".json")) return inFolder(asked);
  return isAbsolute(asked) ? asked : resolve(asked);
}

const isThere = (path: string): boolean => {
  try {
    readFileSync(path);
    return true;
  } catch {
    return false;
  }
};

/** Only a simulated board can be broken on purpose, and only at a contact it has. */
function refuseStrayFaults({ faults, lines }: Environment, board: BoardDescription): void {
  if (faults.length > 0 && lines === "gpio")
    throw new EnvironmentError("SPURWISE_FAULTS: only the simulated board can be broken on purpose");
  const contacts = new Set(contactsOf(board));
  for (const { contact } of faults)
    if (!contacts.has(contact))
      throw new EnvironmentError(`SPURWISE_FAULTS: "${contact}" is no contact of the board ${board.id}`);
}

/**
 * The board a bench works with, by what the environment says.
 *
 * @throws UnusableFileError where there is no such board, or its description is not one; EnvironmentError where it is to
 *   be broken at a place it has not.
 */
export function chosenBoard(environment: Environment): BoardFile {
  const file = readBoardFile(boardPath(environment.board));
  refuseStrayFaults(environment, file.board);
  return file;
}
