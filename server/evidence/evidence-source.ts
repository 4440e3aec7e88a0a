import type { BenchCore } from "../bench/bench-core.ts";
import { attemptEvidence } from "./attempt-evidence.ts";
import type { EvidenceSource } from "./export.ts";

/** What the exports of a bench are made from; undefined where its own records cannot be read. */
export function evidenceSource(core: BenchCore): EvidenceSource | undefined {
  const { records, people, isLogDamaged, softwareVersion, rulePackVersion } = core.parts;
  if (!records || isLogDamaged) return undefined;
  const { attempts, logReader, log } = records;
  return {
    attempts,
    logReader,
    evidenceOf: (attemptId, asked) => attemptEvidence(core, attemptId, asked),
    learnerOf: (id) => (id === null ? undefined : people.toldOf(id)),
    softwareVersion,
    rulePackVersion,
    benchId: log.benchId,
  };
}
