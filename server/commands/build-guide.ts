import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { drawGuide } from "../../hardware/build-guide/draw.ts";
import { readBoard } from "../../shared/board/read-board.ts";
import { problemLine } from "../../shared/reading/problem.ts";
import { folders } from "../folders.ts";

/**
 * Draws schematic, parts list, pin table, wiring list and label sheets of boards into the build guide. Board ids as
 * arguments, or none for all. Exit code 0, or 2 with the place named where a description cannot be read.
 */
export async function run(args: string[]): Promise<number> {
  const ids =
    args.length > 0
      ? args
      : readdirSync(folders.boards)
          .filter((name) => name.endsWith(".json"))
          .map((name) => name.replace(/\.json$/, ""));
  for (const id of ids) {
    const file = join(folders.boards, `${id}.json`);
    const read = existsSync(file) ? readBoard(readFileSync(file, "utf8"), file) : undefined;
    if (read?.ok !== true) {
      const what =
        read === undefined
          ? `there is no board description ${file}`
          : read.problems.map(problemLine).join("; ");
      process.stderr.write(`Spurwise: ${what}\n`);
      return 2;
    }
    const board = read.value;
    const folder = join(folders.root, "hardware/build-guide", board.id);
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    for (const { path, content } of drawGuide(board)) writeFileSync(join(folder, path), content);
    process.stdout.write(`Spurwise: drew the build guide of ${board.name} into ${folder}\n`);
  }
  return 0;
}
