import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { folders } from "../folders.ts";

/** What a version of the rule pack says: for each case the marks of its wiring and of its verdict. */
export interface PackLock {
  packVersion: string;
  /** By the case's file: 16 hexadecimal digits of the wiring, a space, 16 of the verdict. */
  cases: Record<string, string>;
}

/** The committed lock, beside the version that it locks. */
export const packLockFile = join(folders.root, "shared/rules/pack-lock.json");

export const readPackLock = (): PackLock => JSON.parse(readFileSync(packLockFile, "utf8")) as PackLock;

const mark = (value: unknown): string =>
  createHash("sha256").update(JSON.stringify(value)).digest("hex").slice(0, 16);

/** The lock as the cases are judged now. The version itself is no part of a verdict's mark. */
export function packLockOf(
  packVersion: string,
  cases: readonly { file: string; wiring: Wiring }[],
  judge: (wiring: Wiring) => Verdict,
): PackLock {
  const marks = cases.map(({ file, wiring }): [string, string] => {
    const { packVersion: _version, ...said } = judge(wiring);
    return [file, `${mark(wiring)} ${mark(said)}`];
  });
  return { packVersion, cases: Object.fromEntries(marks.sort(([a], [b]) => (a < b ? -1 : 1))) };
}

/**
 * The cases of which the two locks say something else of the same wiring, by the file they have now. A case that is
 * new, gone, renamed or about another wiring changes nothing of the pack.
 */
export function changedVerdicts(before: PackLock, now: PackLock): string[] {
  const verdictOf = new Map(Object.values(before.cases).map((both) => both.split(" ") as [string, string]));
  return Object.entries(now.cases).flatMap(([file, both]) => {
    const [wiring = "", verdict] = both.split(" ");
    const known = verdictOf.get(wiring);
    return known === undefined || known === verdict ? [] : [file];
  });
}

/** What is wrong with a lock, in a sentence that says what to do; undefined where nothing is. */
export function packLockProblem(before: PackLock, now: PackLock): string | undefined {
  const changed = changedVerdicts(before, now);
  if (before.packVersion !== now.packVersion)
    return `packVersion is ${now.packVersion} and the lock is of ${before.packVersion}: npm run pack-lock.`;
  if (changed.length > 0)
    return `Under the same packVersion ${now.packVersion} the verdict is another on ${changed.join(", ")}. Raise packVersion in shared/rules/pack-version.ts, then npm run pack-lock.`;
  return JSON.stringify(before) === JSON.stringify(now)
    ? undefined
    : "Cases were added, renamed or taken away: npm run pack-lock.";
}
