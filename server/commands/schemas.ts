import { execFileSync } from "node:child_process";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { z } from "zod";
import { boardSchema } from "../../shared/board/board.schema.ts";
import { scenarioSchema } from "../../shared/scenario/scenario.schema.ts";
import { wiringSchema } from "../../shared/wiring/wiring.schema.ts";
import { folders } from "../folders.ts";

// Called as a program: bundled into a command it would be many times the size of everything else.
const formatter = join(folders.root, "node_modules/prettier/bin/prettier.cjs");

/** Where each JSON Schema stands, from the top of the project, and what it is made from. */
export const schemaFiles = [
  { path: "shared/wiring/wiring.schema.json", title: "Spurwise wiring", schema: wiringSchema },
  { path: "shared/board/board.schema.json", title: "Spurwise board description", schema: boardSchema },
  { path: "shared/scenario/scenario.schema.json", title: "Spurwise scenario", schema: scenarioSchema },
] as const;

/** The JSON Schema (2020-12) of what a reader takes, as it stands in the file, formatted like every other. */
export function schemaText({ path, title, schema }: (typeof schemaFiles)[number]): string {
  const made = { title, ...z.toJSONSchema(schema, { io: "input" }) };
  return execFileSync(process.execPath, [formatter, "--stdin-filepath", path], {
    input: JSON.stringify(made),
    encoding: "utf8",
    cwd: folders.root,
  });
}

/**
 * Writes the JSON Schemas anew from the schemas the readers use; `--check` only compares. Exit code 1 where
 * `--check` finds one that is out of date, 2 for an argument it does not know.
 */
export async function run(args: string[]): Promise<number> {
  const unknown = args.find((arg) => arg !== "--check");
  if (unknown !== undefined) {
    console.error(`schemas: "${unknown}" is not known. Say nothing to write them, or --check.`);
    return 2;
  }
  const isCheck = args.includes("--check");
  let stale = 0;
  for (const file of schemaFiles) {
    const text = schemaText(file);
    const before = await readFile(join(folders.root, file.path), "utf8").catch(() => "");
    if (before === text) continue;
    stale += 1;
    if (!isCheck) await writeFile(join(folders.root, file.path), text);
    console.log(`${file.path} ${isCheck ? "is out of date: run npm run schemas" : "written"}`);
  }
  if (stale === 0) console.log("The JSON Schemas agree with the readers.");
  return isCheck && stale > 0 ? 1 : 0;
}
