import { readFile, writeFile } from "node:fs/promises";
import { format, resolveConfig } from "prettier";
import { z } from "zod";
import { boardSchema } from "../../shared/board/board.schema.ts";
import { scenarioSchema } from "../../shared/scenario/scenario.schema.ts";
import { wiringSchema } from "../../shared/wiring/wiring.schema.ts";

/** Where each JSON Schema stands, from the top of the project, and what it is made from. */
export const schemaFiles = [
  { path: "shared/wiring/wiring.schema.json", title: "Spurwise wiring", schema: wiringSchema },
  { path: "shared/board/board.schema.json", title: "Spurwise board description", schema: boardSchema },
  { path: "shared/scenario/scenario.schema.json", title: "Spurwise scenario", schema: scenarioSchema },
] as const;

/** The JSON Schema (2020-12) of what a reader takes, as it stands in the file, formatted like every other. */
export async function schemaText({ path, title, schema }: (typeof schemaFiles)[number]): Promise<string> {
  const made = { title, ...z.toJSONSchema(schema, { io: "input" }) };
  return format(JSON.stringify(made), { ...(await resolveConfig(path)), filepath: path });
}

/**
 * Writes the JSON Schemas anew from the schemas the readers use; `--check` only compares. Run it from the top of
 * the project. Exit code 1 where `--check` finds one that is out of date, 2 for an argument it does not know.
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
    const text = await schemaText(file);
    const before = await readFile(file.path, "utf8").catch(() => "");
    if (before === text) continue;
    stale += 1;
    if (!isCheck) await writeFile(file.path, text);
    console.log(`${file.path} ${isCheck ? "is out of date: run npm run schemas" : "written"}`);
  }
  if (stale === 0) console.log("The JSON Schemas agree with the readers.");
  return isCheck && stale > 0 ? 1 : 0;
}
