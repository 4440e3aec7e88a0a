import { writeFileSync } from "node:fs";
import { makeBoards } from "../../hardware/boards/make-boards.ts";

/** Writes the descriptions of the shipped boards again. Exit code 0. */
export async function run(): Promise<number> {
  for (const [name, board] of Object.entries(makeBoards())) {
    const file = `hardware/boards/${name}.json`;
    writeFileSync(file, `${JSON.stringify(board, null, 1)}\n`);
    process.stdout.write(`${file}\n`);
  }
  return 0;
}
