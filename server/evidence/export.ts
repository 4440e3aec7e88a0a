import type { StaffRole } from "../../shared/protocol/author.ts";
import type { AttemptFilter, AttemptReader } from "../store/attempt-reader.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { Asked, AttemptEvidence } from "./attempt-evidence.ts";

/** What every export is made from. It reads and changes nothing. */
export interface EvidenceSource {
  attempts: AttemptReader;
  logReader: LogReader;
  /** An attempt with its drawing, its verdict and what people added; undefined where its documents are gone. */
  evidenceOf: (attemptId: string, asked: Asked) => AttemptEvidence | undefined;
  rulePackVersion: string;
  benchId: string;
  /** Who a learner is; undefined for guests and for whoever was erased. */
  learnerOf: (id: string | null) => { name: string; centreNumber: string } | undefined;
  softwareVersion: string;
}

interface ExportFile {
  /** As it is asked for and saved, with what its name ends on. */
  name: string;
  mediaType: string;
  who: readonly StaffRole[];
}

/** Its bytes, piece by piece: the next one is made when the one before has been sent. */
export type Pieces = Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;

/** One file that evidence goes out in: of all attempts that a list shows, or of one of them. */
export type Export = ExportFile &
  (
    | {
        of: "attempts";
        /** It tells of the attempts that a list is narrowed to, and of no others. */
        isNarrowed: boolean;
        /** How many lines the file will have, for who waits for it; left out where that is told only at its end. */
        lineCount?: (source: EvidenceSource, filter: AttemptFilter) => number;
        pieces: (source: EvidenceSource, filter: AttemptFilter, asked: Asked) => Pieces;
      }
    | { of: "attempt"; pieces: (source: EvidenceSource, record: AttemptRecord, asked: Asked) => Pieces }
  );

/** Whoever judges attempts or checks how they were judged. */
export const evidenceReaders: readonly StaffRole[] = ["trainer", "assessor", "verifier"];
