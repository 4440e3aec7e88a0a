import { isWholeRun } from "../server/commands/whole-run.ts";
import { testDepth } from "./depth.ts";
import { newSeed } from "./new-seed.ts";
import { partOf } from "./part-of.ts";

/** Whether a sweep goes over each of its cases. */
export const isWhole = isWholeRun(process.env);

/** How many times the usual number of random cases the longest searches take: `TEST_DEPTH`, less where a run is not whole. */
export const randomShare = isWhole ? testDepth : 0.4;

/** The cases of a sweep that this run tries: one of so many where it is not whole. `TEST_NEW_SEED` brings a run back. */
export const someOf = <T>(cases: readonly T[], oneOf: number, more = 0): readonly T[] =>
  partOf({ isWhole, seed: newSeed }, cases, oneOf, more);
