import type { StaffRole } from "./author.ts";
import type { Health } from "./socket-events.ts";

/** Where the desk finds what keeps a bench and its people; each address answers with one of the views below as JSON. */
export const keepData = "/keep-data";

/** Who sits at the desk. */
export interface KeeperView {
  id: string;
  name: string;
  role: StaffRole;
  /** Whoever looks sits at the bench's own screen. */
  isAtBench: boolean;
  benchName: string;
}

/** What the power supply and the processor's temperature did, now and since the start. */
export const powerTroubles = ["undervoltage", "frequency-capped", "throttled", "too-warm"] as const;
export type PowerTrouble = (typeof powerTroubles)[number];

/** How the machine of a bench is. What cannot be read on this machine is null. */
export interface MachineView {
  power: { now: PowerTrouble[]; sinceStart: PowerTrouble[] } | null;
  clock: { state: Health["clock"]; nowWallMs: number };
  disk: {
    freeBytes: number;
    sizeBytes: number;
    /** What this program wrote, for a day at the pace since its start. */
    programWritesBytesADay: number | null;
    /** What everything wrote to the disk under the data folder, for a day at the pace since the machine's start. */
    diskWritesBytesADay: number | null;
  };
  /** Of the last events put on the disk; null before the first. */
  commit: { medianMs: number; worstMs: number; count: number } | null;
  database: { sizeBytes: number; schemaVersion: number; sqliteVersion: string };
  log: Health["log"] & { boot: number; head: string };
  board: Health["board"] & {
    lines: Health["lines"];
    hasGpioLibrary: boolean;
    selfCheck: { faultCount: number; wallMs: number } | null;
    faultCount: number;
  };
  versions: { software: string; rulePack: string; node: string; system: string };
  /** How far the log is at the centre; null where it goes to none. */
  centre: NonNullable<Health["centre"]> | null;
  backUp: {
    /** False: nobody chose a folder for them. */
    isChosen: boolean;
    state: NonNullable<Health["backUp"]> | null;
    /** The newest that lies there. */
    newestWallMs: number | null;
  };
  /** Since the program, and the machine, were started. */
  upMs: { program: number; machine: number };
  memoryBytes: number;
}

/** What was agreed with a learner; never a penalty. */
export interface Adjustments {
  /** So much more time than others have. */
  extraTimePercent: number;
  hasRests: boolean;
  isLarge: boolean;
  isReadAloud: boolean;
}
export const noAdjustments: Adjustments = {
  extraTimePercent: 0,
  hasRests: false,
  isLarge: false,
  isReadAloud: false,
};

export interface LearnerView {
  id: string;
  name: string;
  centreNumber: string;
  isHeld: boolean;
  hasBadge: boolean;
  /** When they last worked here, where their time to be kept is over; null where it is not, and for who is on hold. */
  dueSinceWallMs: number | null;
  adjustments: Adjustments;
}

export interface PeopleView {
  /** The people are invented: nothing is changed. */
  isDemonstration: boolean;
  keepYears: number;
  learners: LearnerView[];
}

/** A line of a file that cannot be taken, counted from 1, and why. */
export interface FileFault {
  line: number;
  message: string;
}

/** What of a class list would come in, or did; nobody where there are faults. */
export interface ClassListView {
  learners: { line: number; name: string; centreNumber: string; hasBadge: boolean }[];
  faults: FileFault[];
}

/** Badges that were made, to be printed now: nobody can read them later. */
export interface BadgesView {
  badges: { id: string; name: string; centreNumber: string; code: string }[];
}

/** The criteria assessors decide by, or what stands against a file of them. */
export interface CriteriaView {
  title: { en: string; pl: string };
  criteria: { id: string; text: { en: string; pl: string }; proposedBy?: string | undefined }[];
  faults: FileFault[];
}

/** How much of a class; never a number that could be counted back to somebody. */
export const classShares = ["most", "half", "some"] as const;
export type ClassShare = (typeof classShares)[number];

/** What a class tripped over on a day, without names. */
export interface DebriefView {
  /** Too few worked for anything to be told without telling of somebody. */
  isTooFew: boolean;
  lines: { rule: string; title: string; share: ClassShare }[];
}

/** What a technician lets the bench do with its records, or with its program. */
export type TaskKind = "back-up" | "try-restore" | "restore" | "update";
export type TaskStep = "copying" | "proving" | "sealing" | "placing" | "checking" | "trying";

/** What is being done, or was done last. */
export interface TaskView {
  what: TaskKind;
  state: "going" | "done" | "stopped" | "failed";
  step: TaskStep;
  /** How far the step has come, of how much; 0 of 0 where that is not known. */
  doneCount: number;
  totalCount: number;
  /** Why it failed. */
  problem: string | null;
  /** What it came to. */
  facts: Record<string, string | number>;
}

/** Back-ups, and the program, as the technician sees to them. */
export interface KeepingView {
  task: TaskView | null;
  /** Where back-ups go where no folder is named; null where nobody chose one. */
  folder: string | null;
  /** Back-ups are sealed with the passphrase of the settings where none is typed. */
  isSealedByDefault: boolean;
  /** The back-ups of the folder that is looked at, the newest first; null where it cannot be looked at. */
  backUps: { name: string; sizeBytes: number; madeWallMs: number | null; isSealed: boolean }[] | null;
  /** The version that runs, and whether updates can be taken: a key of who publishes them is set. */
  version: string;
  canUpdate: boolean;
}

/** Why a task is not begun. */
export type TaskRefusal = "busy" | "in-use" | "no-folder" | "no-back-up" | "short-passphrase" | "no-key";
