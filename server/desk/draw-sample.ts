import { createHash } from "node:crypto";
import type { SampleRisk } from "../../shared/protocol/decision-words.ts";
import type { AttemptFilter, AttemptReader } from "../store/attempt-reader.ts";
import { eachAttempt } from "../store/each-attempt.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";

export interface SampleAsked {
  seed: string;
  size: number;
  risk: SampleRisk;
  /** Who decided. */
  assessor?: string | undefined;
  scenario?: string | undefined;
}

const isAtRisk: Record<SampleRisk, (record: AttemptRecord) => boolean> = {
  all: () => true,
  overridden: (record) => (record.overrideCount ?? 0) > 0,
  danger: (record) => (record.dangerCount ?? 0) > 0,
};

/** SHA-256 of the seed, a line end and the attempt's id: the sample is those that come first by it. */
const rankOf = (seed: string, attemptId: string): string =>
  createHash("sha256").update(`${seed}\n${attemptId}`, "utf8").digest("hex");

/** Draws from the attempts that were decided on; the same seed and attempts give the same sample. */
export function drawSample(
  attempts: AttemptReader,
  { seed, size, risk, assessor, scenario }: SampleAsked,
): { candidateCount: number; attempts: string[] } {
  const filter: AttemptFilter = {
    isDecided: true,
    ...(scenario === undefined ? {} : { scenario }),
    ...(assessor === undefined ? {} : { decidedBy: assessor }),
  };
  const ranks = [...eachAttempt(attempts, filter)]
    .filter(isAtRisk[risk])
    .map(({ attemptId }) => ({ attemptId, rank: rankOf(seed, attemptId) }))
    .sort((a, b) => (a.rank < b.rank ? -1 : 1));
  return { candidateCount: ranks.length, attempts: ranks.slice(0, size).map(({ attemptId }) => attemptId) };
}
