import type { StaffRole } from "../../shared/protocol/author.ts";
import type { AttemptFilter, AttemptReader } from "../store/attempt-reader.ts";
import type { AttemptRecord } from "../store/attempt-record.ts";
import type { LogReader } from "../store/log-reader.ts";

/** What every export is made from. It reads and changes nothing. */
export interface EvidenceSource {
  attempts: AttemptReader;
  logReader: LogReader;
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
    | { of: "attempts"; pieces: (source: EvidenceSource, filter: AttemptFilter) => Pieces }
    | { of: "attempt"; pieces: (source: EvidenceSource, record: AttemptRecord) => Pieces }
  );

/** Whoever judges attempts or checks how they were judged. */
export const evidenceReaders: readonly StaffRole[] = ["trainer", "assessor", "verifier"];
