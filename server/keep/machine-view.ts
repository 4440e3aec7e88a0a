import { release, type as systemName, uptime } from "node:os";
import { statfsSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { performance } from "node:perf_hooks";
import type { MachineView } from "../../shared/protocol/keep-view.ts";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { BenchCore } from "../bench/bench-core.ts";
import type { LastSelfCheck } from "../bench/board-now.ts";
import { backUpsIn } from "../keeping/back-up.ts";
import type { KeptNote } from "../machine/kept-notes.ts";
import { aDay, readDiskWrites, readProcessWrites } from "../machine/disk-writes.ts";
import { readPower } from "../machine/power.ts";
import { schemaVersion } from "../store/open-database.ts";

export interface MachineParts {
  /** The file of the records. */
  databasePath: string;
  /** Where nightly back-ups go; undefined where nobody chose a folder. */
  backUpTo: string | undefined;
  sqliteVersion: string;
  /** What the program said last. */
  notes: () => readonly KeptNote[];
}

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

/** When a back-up was made, by its name, as `spurwise-20261126-224500-1a2b.backup`; null where it has none. */
export function backUpTime(name: string): number | null {
  const [, year, month, day, hour, minute, second] =
    /^spurwise-(\d{4})(\d\d)(\d\d)-(\d\d)(\d\d)(\d\d)-/.exec(name) ?? [];
  if (year === undefined) return null;
  const wallMs = Date.parse(`${year}-${month}-${day}T${hour}:${minute}:${second}Z`);
  return Number.isNaN(wallMs) ? null : wallMs;
}

function diskOf(databasePath: string, programUpMs: number, machineUpMs: number): MachineView["disk"] {
  const folder = dirname(databasePath);
  const { bavail, blocks, bsize } = statfsSync(folder);
  return {
    freeBytes: bavail * bsize,
    sizeBytes: blocks * bsize,
    programWritesBytesADay: aDay(readProcessWrites(), programUpMs),
    diskWritesBytesADay: aDay(readDiskWrites(folder), machineUpMs),
  };
}

const selfCheckOf = (last: LastSelfCheck | undefined): MachineView["board"]["selfCheck"] =>
  last ? { faultCount: last.faultCount, wallMs: last.wallMs } : null;

/** How the machine, its records and its board are, for the technician. @throws StoreError or a file system error */
export function machineView(core: BenchCore, health: Health, parts: MachineParts): MachineView {
  const { databasePath, backUpTo, sqliteVersion } = parts;
  const { records, clock } = core.parts;
  const { board } = core;
  const programUpMs = performance.now();
  const machineUpMs = uptime() * 1000;
  const [newest] = backUpTo === undefined ? [] : backUpsIn(backUpTo);
  return {
    power: readPower(),
    clock: { state: health.clock, nowWallMs: clock.wallMs() },
    disk: diskOf(databasePath, programUpMs, machineUpMs),
    commit: records?.log.commits.summary ?? null,
    database: {
      sizeBytes: sizeOf(databasePath) + sizeOf(`${databasePath}-wal`),
      schemaVersion,
      sqliteVersion,
    },
    log: { ...health.log, boot: records?.log.boot ?? 0, head: records?.log.anchor?.head ?? "" },
    board: {
      ...health.board,
      lines: health.lines,
      hasGpioLibrary: health.hasGpioLibrary,
      selfCheck: selfCheckOf(board.lastSelfCheck),
      faultCount: board.isReady ? (board.sensed?.faults.length ?? 0) : 0,
    },
    versions: {
      software: health.softwareVersion,
      rulePack: health.rulePackVersion,
      node: process.version,
      system: `${systemName()} ${release()} ${process.arch}`,
    },
    centre: health.centre ?? null,
    backUp: {
      isChosen: backUpTo !== undefined,
      state: health.backUp ?? null,
      newestWallMs: newest === undefined ? null : backUpTime(newest),
    },
    upMs: { program: programUpMs, machine: machineUpMs },
    memoryBytes: process.memoryUsage.rss(),
  };
}
