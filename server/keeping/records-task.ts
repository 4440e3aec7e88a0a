import type { Author } from "../../shared/protocol/author.ts";
import type { TaskStep } from "../../shared/protocol/keep-view.ts";
import type { UpdateErrorCode } from "../update/update-error.ts";
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
      /** How many back-ups stay in the folder; left out where none is taken away. */
      keepCount?: number;
    }
  | {
      /** Makes a back-up ready to take the place of the log, or only tries whether it could. */
      what: "restore";
      from: string;
      path: string;
      passphrase?: string | undefined;
      author: Author;
      isTried: boolean;
    }
  | UpdateTask;

/** Takes an update in and tries it on a copy of the records. */
export interface UpdateTask {
  what: "update";
  from: string;
  publicKey: string;
  /** The file of the log. */
  path: string;
  /** The version that runs, the folder of its packages and what they are locked to. */
  version: string;
  modules: string;
  lock: string;
}

/** What the process tells. */
export type FromRecordsWorker =
  | { type: "progress"; step?: TaskStep; doneCount: number; totalCount?: number }
  | { type: "proved"; isSound: true; rowCount: number }
  | { type: "proved"; isSound: false; firstBadRecord: string; reason: string }
  | { type: "backed-up"; file: string; rowCount: number }
  | { type: "ready"; rowCount: number; madeWallMs: number; erasedCount: number }
  | { type: "tried"; version: string }
  | { type: "failed"; code: StoreErrorCode | UpdateErrorCode; reason: string };
