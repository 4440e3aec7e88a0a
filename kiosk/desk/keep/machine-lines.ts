import type { MachineView } from "../../../shared/protocol/keep-view.ts";
import type { KeepWords } from "./keep-words.svelte.ts";

/** A line of the page about the machine: what it is about, what is said, and whether somebody has to act. */
export interface MachineLine {
  what: (typeof lineNames)[number];
  said: string;
  isSerious: boolean;
}

const lineNames = [
  "power",
  "clock",
  "disk",
  "wear",
  "commit",
  "database",
  "chain",
  "board",
  "self-check",
  "versions",
  "back-up",
  "centre",
  "up",
] as const;

/** So much of the disk free is little. */
const leastFree = 0.1;
const longCommitMs = 100;
const oldBackUpMs = 3 * 24 * 3_600_000;

type Says = Pick<KeepWords, "t" | "bytes" | "number" | "span" | "time">;
type Said = Omit<MachineLine, "what">;

const fine = (said: string): Said => ({ said, isSerious: false });

function power({ power: found }: MachineView, words: Says): Said {
  if (!found) return fine(words.t("machine.cannot-be-read"));
  const names = (troubles: typeof found.now): string =>
    troubles.map((trouble) => words.t(`power.${trouble}`)).join(", ");
  if (found.now.length > 0)
    return { said: words.t("power.now", { what: names(found.now) }), isSerious: true };
  if (found.sinceStart.length > 0)
    return { said: words.t("power.since-start", { what: names(found.sinceStart) }), isSerious: true };
  return fine(words.t("power.good"));
}

const clock = ({ clock: { state, nowWallMs } }: MachineView, words: Says): Said => ({
  said: words.t(`clock.${state}`, { time: words.time(nowWallMs) }),
  isSerious: state === "unsynced",
});

const disk = ({ disk: { freeBytes, sizeBytes } }: MachineView, words: Says): Said => ({
  said: words.t("disk.free", { free: words.bytes(freeBytes), size: words.bytes(sizeBytes) }),
  isSerious: freeBytes < sizeBytes * leastFree,
});

function wear({ disk: { programWritesBytesADay, diskWritesBytesADay } }: MachineView, words: Says): Said {
  const said = (bytes: number | null): string =>
    bytes === null ? words.t("machine.cannot-be-read") : words.t("disk.a-day", { bytes: words.bytes(bytes) });
  return fine(
    words.t("disk.wear", { program: said(programWritesBytesADay), disk: said(diskWritesBytesADay) }),
  );
}

function commit({ commit: found }: MachineView, words: Says): Said {
  if (!found) return fine(words.t("commit.none"));
  const { medianMs, worstMs, count } = found;
  return {
    said: words.t("commit.took", { median: words.number(medianMs), worst: words.number(worstMs), count }),
    isSerious: medianMs > longCommitMs,
  };
}

const database = (
  { database: { sizeBytes, schemaVersion, sqliteVersion }, log }: MachineView,
  words: Says,
): Said =>
  fine(
    words.t("database.is", {
      size: words.bytes(sizeBytes),
      count: log.eventCount,
      version: schemaVersion,
      sqlite: sqliteVersion,
    }),
  );

const chain = ({ log }: MachineView, words: Says): Said => ({
  said: words.t(`chain.${log.state}`, {
    done: log.doneCount ?? 0,
    bad: log.firstBadRecord ?? "",
    boot: log.boot,
    head: log.head.slice(0, 12),
  }),
  isSerious: log.state === "damaged",
});

const board = (
  { board: { id, state, problem, lines, hasGpioLibrary, faultCount } }: MachineView,
  words: Says,
): Said => {
  const facts = { id, lines: words.t(`lines.${lines}`), problem: problem ?? "", count: faultCount };
  const said = words.t(faultCount > 0 && state === "ready" ? "board.faults" : `board.${state}`, facts);
  const library = lines === "gpio" && !hasGpioLibrary ? ` ${words.t("board.no-library")}` : "";
  return { said: said + library, isSerious: state === "no-board" || faultCount > 0 };
};

function selfCheck({ board: { selfCheck: last } }: MachineView, words: Says): Said {
  if (!last) return fine(words.t("self-check.none"));
  const facts = { time: words.time(last.wallMs), count: last.faultCount };
  const key = last.faultCount > 0 ? "self-check.faults" : "self-check.well";
  return { said: words.t(key, facts), isSerious: last.faultCount > 0 };
}

const versions = ({ versions: found }: MachineView, words: Says): Said =>
  fine(words.t("versions.are", found));

function backUp(
  { backUp: { isChosen, state, newestWallMs }, clock: { nowWallMs } }: MachineView,
  words: Says,
): Said {
  const newest =
    newestWallMs === null
      ? words.t("back-up.none")
      : words.t("back-up.newest", { time: words.time(newestWallMs) });
  if (!isChosen) return { said: words.t("back-up.no-folder"), isSerious: true };
  if (state?.state === "failed")
    return { said: `${words.t("back-up.failed", { problem: state.problem })} ${newest}`, isSerious: true };
  if (state?.state === "making") return fine(words.t("back-up.making", { count: state.doneCount }));
  return { said: newest, isSerious: newestWallMs === null || nowWallMs - newestWallMs > oldBackUpMs };
}

function centre({ centre: found }: MachineView, words: Says): Said {
  if (!found) return fine(words.t("centre.none"));
  const { sent: place, trouble } = found;
  const sent = place ? words.t("centre.sent", place) : words.t("centre.nothing");
  if (!trouble) return fine(sent);
  const why = trouble.why === "not-reached" || trouble.why === "set-aside" ? trouble.why : "refused";
  return { said: words.t(`centre.${why}`, { sent }), isSerious: true };
}

const up = ({ upMs, memoryBytes }: MachineView, words: Says): Said =>
  fine(
    words.t("up.since", {
      program: words.span(upMs.program),
      machine: words.span(upMs.machine),
      memory: words.bytes(memoryBytes),
    }),
  );

const makers: Record<MachineLine["what"], (machine: MachineView, words: Says) => Said> = {
  power,
  clock,
  disk,
  wear,
  commit,
  database,
  chain,
  board,
  "self-check": selfCheck,
  versions,
  "back-up": backUp,
  centre,
  up,
};

/** What the page about the machine says, line by line; what cannot be read on this machine says so. */
export const machineLines = (machine: MachineView, words: Says): MachineLine[] =>
  lineNames.map((what) => ({ what, ...makers[what](machine, words) }));
