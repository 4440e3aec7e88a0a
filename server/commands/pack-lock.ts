import { writeFileSync } from "node:fs";
import { judge } from "../../shared/rules/judge.ts";
import { packVersion } from "../../shared/rules/pack-version.ts";
import { lockedCases } from "../pack/locked-cases.ts";
import {
  changedVerdicts,
  packLockFile,
  packLockOf,
  packLockProblem,
  readPackLock,
} from "../pack/pack-lock.ts";

/**
 * Writes the lock of the rule pack anew: the marks of all cases' verdicts. Exit code 1, and nothing written, where a
 * verdict changed and `packVersion` did not; 2 for an argument.
 */
export async function run(args: string[]): Promise<number> {
  if (args.length > 0) {
    console.error(`pack-lock: "${args[0]}" is not known. It takes nothing.`);
    return 2;
  }
  const before = readPackLock();
  const now = packLockOf(packVersion, lockedCases(), judge);
  if (before.packVersion === now.packVersion && changedVerdicts(before, now).length > 0) {
    console.error(packLockProblem(before, now));
    return 1;
  }
  writeFileSync(packLockFile, `${JSON.stringify(now, undefined, 2)}\n`);
  console.log(`The lock of ${packVersion} holds ${Object.keys(now.cases).length} cases.`);
  return 0;
}
