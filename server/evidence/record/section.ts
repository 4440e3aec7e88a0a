import type { AttemptRecord } from "../../store/attempt-record.ts";
import type { AttemptEvidence } from "../attempt-evidence.ts";
import type { EvidenceSource } from "../export.ts";
import type { Paper } from "./paper.ts";
import type { RecordWords } from "./record-words.ts";

/** All that a record on paper tells. */
export interface ToldRecord {
  evidence: AttemptEvidence;
  record: AttemptRecord;
  source: EvidenceSource;
  words: RecordWords;
}

/** Writes one part of a record. */
export type Section = (paper: Paper, told: ToldRecord) => void;
