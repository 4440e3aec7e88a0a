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
