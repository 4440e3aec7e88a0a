import { groupFindings } from "../../shared/rules/wording/group-findings.ts";
import type { TestBench } from "./test-bench.ts";

/** The verdict last asked for or handed in, with the ids of its notes, without looking for what mends them. */
export function askedVerdict(bench: TestBench): { notes: string[]; proposal: string } {
  const asked = bench.bench.core.work.run?.state.asked;
  if (!asked) throw new Error("no verdict");
  return { notes: groupFindings(asked.verdict).map(([{ id }]) => id), proposal: asked.verdict.proposal };
}
