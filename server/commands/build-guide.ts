import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { drawGuide } from "../../hardware/build-guide/draw.ts";
import { boardSchema } from "../../shared/board/board.schema.ts";
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
    const read = readBoard(file);
    if (typeof read === "string") {
      process.stderr.write(`Spurwise: ${read}\n`);
      return 2;
    }
    const folder = join(folders.root, "hardware/build-guide", read.id);
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    for (const { path, content } of drawGuide(read)) writeFileSync(join(folder, path), content);
    process.stdout.write(`Spurwise: drew the build guide of ${read.name} into ${folder}\n`);
  }
  return 0;
}

function readBoard(file: string) {
  let json: unknown;
  try {
    json = JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    return `${file} cannot be read: ${error instanceof Error ? error.message : String(error)}`;
  }
  const parsed = boardSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  return `${file}: ${issue?.path.join(".") ?? ""}: ${issue?.message ?? "not a board description"}`;
}
