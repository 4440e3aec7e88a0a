import { mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import { fastFolder } from "../fast-folder.ts";

/** A folder of its own for one check, removed when the check is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(fastFolder(), "spurwise-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
