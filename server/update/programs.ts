import { existsSync, mkdirSync, readdirSync, readFileSync, realpathSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { writeWhole } from "../store/write-whole.ts";

/** Which program of those in a data folder is started. */
const choiceSchema = z.strictObject({
  current: z.string(),
  /** The one of before; null where that is the one that was installed. */
  previous: z.string().nullable(),
  /** There while it has not yet shown that it is healthy. */
  trial: z
    .strictObject({
      startCount: z.number().int(),
      /** It has said itself that it is not healthy. */
      isFailed: z.boolean(),
      /** The form of the records before it: where it is another after it, a way back brings the records back too. */
      schemaVersion: z.number().int(),
      /** A board was there before it. */
      wasBoardReady: z.boolean(),
    })
    .nullable(),
});
export type ProgramChoice = z.infer<typeof choiceSchema>;

const programsIn = (data: string): string => join(data, "program");
const choiceIn = (data: string): string => join(programsIn(data), "choice.json");

/** Where an update is taken in before it is anybody's program. */
export const incomingIn = (data: string): string => join(programsIn(data), "incoming");
/** The records as they were before an update. */
export const beforeIn = (data: string): string => join(programsIn(data), "before");
/** The folder of a program by its version. */
export const programIn = (data: string, version: string): string => join(programsIn(data), version);

/** Which program was chosen; undefined where none was, or what was kept is none. */
export function readChoice(data: string): ProgramChoice | undefined {
  try {
    const parsed = parseSafely(choiceSchema, JSON.parse(readFileSync(choiceIn(data), "utf8")));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}

/** @throws a file system error; then the choice of before still stands. */
export function writeChoice(data: string, choice: ProgramChoice | undefined): void {
  if (!choice) return rmSync(choiceIn(data), { force: true });
  mkdirSync(programsIn(data), { recursive: true, mode: 0o700 });
  writeWhole(choiceIn(data), `${JSON.stringify(choice)}\n`);
}

/**
 * Chooses what was taken in for the next start, on trial; programs that are neither it nor the one before go.
 *
 * @throws a file system error
 */
export function chooseIncoming(
  data: string,
  version: string,
  before: { schemaVersion: number; wasBoardReady: boolean },
): void {
  const previous = readChoice(data)?.current ?? null;
  rmSync(programIn(data, version), { recursive: true, force: true });
  renameSync(incomingIn(data), programIn(data, version));
  const trial = { startCount: 0, isFailed: false, ...before };
  writeChoice(data, { current: version, previous, trial });
  for (const name of readdirSync(programsIn(data)))
    if (/^\d+\.\d+\.\d+$/.test(name) && name !== version && name !== previous)
      rmSync(join(programsIn(data), name), { recursive: true, force: true });
}

/** What starts a program; undefined where it is not there. */
export function mainOf(data: string, version: string): string | undefined {
  const path = join(programIn(data, version), "dist/server/main.js");
  return existsSync(path) ? path : undefined;
}

/** True where the program in a folder is the chosen one, and on trial. */
export function isOnTrial(data: string, root: string): boolean {
  const choice = readChoice(data);
  if (!choice?.trial || mainOf(data, choice.current) === undefined) return false;
  return realpathSync(programIn(data, choice.current)) === realpathSync(root);
}
