import type { StoreErrorCode } from "../store/store-error.ts";

/** What is done with the records beside the bench's work, in a process of its own. */
export type RecordsTask =
  | { what: "check"; path: string }
  | {
      what: "back-up";
      path: string;
      to: string;
      softwareVersion: string;
      wallMs: number;
      passphrase?: string | undefined;
    };

/** What the process tells. */
export type FromRecordsWorker =
  | { type: "progress"; doneCount: number }
  | { type: "proved"; isSound: true; rowCount: number }
  | { type: "proved"; isSound: false; firstBadRecord: string; reason: string }
  | { type: "backed-up"; file: string }
  | { type: "failed"; code: StoreErrorCode; reason: string };
