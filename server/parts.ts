import { createPublicKey } from "node:crypto";
import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { isAbsolute, join, resolve } from "node:path";
import { linesSentence } from "../hardware/lines/lines-sentence.ts";
import type { LinesKind } from "../hardware/scan/scanner-messages.ts";
import { systemdWatchdog } from "../hardware/scan/systemd-watchdog.ts";
import type { BoardDescription } from "../shared/board/board.schema.ts";
import type { Health } from "../shared/protocol/socket-events.ts";
import { judge } from "../shared/rules/judge.ts";
import { packVersion } from "../shared/rules/pack-version.ts";
import type { Records } from "./bench/bench-core.ts";
import { contactsOf } from "./board/contacts-of.ts";
import { scannerProcess } from "./board/scanner-process.ts";
import type { Clock } from "./clock/clock.ts";
import { systemClock, systemTimers } from "./clock/system-clock.ts";
import { readCriteria } from "./desk/read-criteria.ts";
import type { NetworkDoor, ServerParts } from "./create-server.ts";
import { type Environment, EnvironmentError } from "./environment.ts";
import { dataFolder, folders, logFile } from "./folders.ts";
import { ScenarioShelf } from "./author/scenario-shelf.ts";
import { readBoardFile, ScenarioFolder } from "./library.ts";
import { type OpenedRecords, openRecords } from "./open-records.ts";
import { readCertificate } from "./web/certificate.ts";
import { everyAddress } from "./web/origin.ts";
import { WebSessions } from "./web/web-sessions.ts";
import { ScannerClient } from "./scanner-client.ts";
import { demoPeople } from "./demo/people.ts";
import { withCentre } from "./centre/with-centre.ts";
import { openLead } from "./lead/open-lead.ts";
import { TaskLibrary } from "./lead/task-library.ts";
import { KeptNotes } from "./machine/kept-notes.ts";
import { GuessGuard } from "./people/guess-guard.ts";
import { GuessMemory } from "./people/guess-memory.ts";
import { People } from "./people/people.ts";
import { PinHasher } from "./people/pin-hash.ts";
import { holdFolder } from "./store/hold-folder.ts";
import type { StartAgain } from "./keeping/desk-tasks.ts";
import { restoreWanted } from "./keeping/restore.ts";
import { sentenceFor } from "./start-sentence.ts";
import { dueLearners } from "./keeping/due.ts";
import { RecordsKeeper } from "./keeping/records-keeper.ts";
import { sqliteVersionOf } from "./store/open-database.ts";
import { StoreError } from "./store/store-error.ts";

/** What was opened, and what closes it again in reverse. */
export interface OpenedParts {
  parts: ServerParts;
  /** Tells the service manager, where there is one, that the bench listens. */
  ready: () => void;
  /** Reads the scenarios, once the server listens. */
  readScenarios: () => Promise<void>;
  /** Starts after that what goes on beside the work: the check of the log, and what goes to and comes from the centre. */
  startBesides: (told: Besides) => void;
  close: () => void;
}

/** What is called back from beside the work. */
interface Besides {
  /** A record of the log is not as it was written. */
  damaged: () => void;
  /** Something of other benches is new here. */
  changed: () => void;
}

/** The board of a bench without a say: the first of these that is there. */
const usualBoards = ["workshop", "small"];

function boardPath(asked: string | undefined): string {
  const inFolder = (id: string): string => join(folders.boards, `${id}.json`);
  if (asked === undefined) {
    const found = usualBoards.find((id) => isThere(inFolder(id)));
    return inFolder(found ?? usualBoards[0] ?? "");
  }
  if (!asked.endsWith(".json")) return inFolder(asked);
  return isAbsolute(asked) ? asked : resolve(asked);
}

const isThere = (path: string): boolean => {
  try {
    readFileSync(path);
    return true;
  } catch {
    return false;
  }
};

/** True where a GPIO library is installed. It is only looked for here, never loaded. */
const hasGpioLibrary = (): boolean =>
  ["onoff", "node-libgpiod"].some((name) => {
    try {
      createRequire(folders.manifest).resolve(name);
      return true;
    } catch {
      return false;
    }
  });

const softwareVersion = (): string => {
  const manifest = JSON.parse(readFileSync(folders.manifest, "utf8")) as { version: string };
  return manifest.version;
};

function openHeldRecords(
  path: string,
  note: (sentence: string) => void,
  elsewhere: string | undefined,
  letGo: () => void,
) {
  try {
    return openRecords(path, note, elsewhere);
  } catch (error) {
    letGo();
    throw error;
  }
}

/** A back-up that a technician made ready takes its place, before anything is open. */
function bringBackWanted(
  path: string,
  clock: Clock,
  anchorTo: string | undefined,
  note: (sentence: string) => void,
  letGo: () => void,
): void {
  try {
    const found = restoreWanted(path, clock, anchorTo);
    if (found === undefined) return;
    if ("error" in found)
      note(`the back-up was not brought back: ${sentenceFor(found.error) ?? found.error.message}`);
    else note(`a back-up was brought back; what was there before: ${found.replaced ?? "nothing"}`);
  } catch (error) {
    letGo();
    throw error;
  }
}

/** The key of who publishes updates, as it was set when the bench was installed; undefined where it cannot be read. */
function updateKeyOf(path: string | undefined, note: (sentence: string) => void): string | undefined {
  if (path === undefined) return undefined;
  try {
    return createPublicKey(readFileSync(path)).export({ type: "spki", format: "pem" }).toString();
  } catch {
    note(`no update is taken: ${path} holds no key of who publishes them`);
    return undefined;
  }
}

/** A data folder that the bench makes is its own user's alone. */
const ownOnly = 0o700;

const checkpointEveryMs = 60_000;

function checkpointWhenIdle({ log }: Records): void {
  try {
    log.checkpointIfNew();
  } catch (error) {
    // The next append meets the damage and says it.
    if (!(error instanceof StoreError)) throw error;
  }
}

/**
 * The door on the network, where a technician has chosen to let it in; whatever the environment says, it stays shut
 * before. A bench whose list of people cannot be trusted keeps it shut as well.
 */
function networkDoor(
  { host, networkPort, names, data }: Environment,
  { records, people: store }: OpenedRecords,
  people: People,
): NetworkDoor | undefined {
  const isChosen = records.memoryReader.read().isNetworkChosen;
  if (!isChosen || !store || people.isDemonstration || people.firstStartCode !== undefined) return undefined;
  return { host: host ?? everyAddress, port: networkPort, names, tls: readCertificate(dataFolder(data)) };
}

/** Only a simulated board can be broken on purpose, and only at a contact it has. */
function refuseStrayFaults({ faults, lines }: Environment, board: BoardDescription): void {
  if (faults.length > 0 && lines === "gpio")
    throw new EnvironmentError("SPURWISE_FAULTS: only the simulated board can be broken on purpose");
  const contacts = new Set(contactsOf(board));
  for (const { contact } of faults)
    if (!contacts.has(contact))
      throw new EnvironmentError(`SPURWISE_FAULTS: "${contact}" is no contact of the board ${board.id}`);
}

/**
 * Opens everything a bench works with, by what the environment says.
 *
 * @throws EnvironmentError, StoreError, UnusableFileError or a file system error; then nothing is left open.
 */
export function openParts(
  environment: Environment,
  say: (sentence: string) => void,
  startAgain: (what: StartAgain) => void = () => undefined,
): OpenedParts {
  const clock = systemClock();
  const notes = new KeptNotes(say, () => clock.wallMs());
  const { note } = notes;
  const { board, bytes } = readBoardFile(boardPath(environment.board));
  refuseStrayFaults(environment, board);
  const data = dataFolder(environment.data);
  mkdirSync(data, { recursive: true, mode: ownOnly });
  const letGo = holdFolder(data);
  bringBackWanted(logFile(data), clock, environment.anchorTo, note, letGo);
  const opened = openHeldRecords(logFile(data), note, environment.anchorTo, letGo);
  const lines: LinesKind = environment.lines;
  const watchdog = systemdWatchdog(process.env, () => performance.now());
  const port = new ScannerClient({
    start: scannerProcess(folders.scannerChild),
    lines,
    spinUs: environment.spinUs,
    faults: environment.faults,
    timers: systemTimers,
    alive: () => watchdog.alive(),
    note,
  });
  const keeper = new RecordsKeeper({
    program: folders.recordsWorker,
    path: opened.reading.name,
    backUpTo: opened.isBesideDamaged ? undefined : environment.backUpTo,
    passphrase: environment.backUpPassphrase,
    softwareVersion: softwareVersion(),
    clock,
    timers: systemTimers,
    eventCount: () => opened.records.logReader.eventCount(),
    note,
  });
  if (environment.backUpTo !== undefined && environment.backUpPassphrase === undefined)
    note(
      "nightly back-ups are not sealed: they hold what names are read with. Set SPURWISE_BACKUP_PASSPHRASE.",
    );
  const updateKey = updateKeyOf(environment.updateKey, note);
  const isSimulated = lines !== "gpio";
  const centre = withCentre(environment, opened, note);
  const pins = new PinHasher();
  const people = new People({
    store: opened.people,
    others: centre.others,
    demo: isSimulated ? demoPeople : [],
    pins,
    guard: new GuessGuard(() => clock.monotonicMs(), new GuessMemory(opened.reading, opened.writing)),
  });
  const network = networkDoor(environment, opened, people);
  const ownTasks = new ScenarioFolder(folders.scenarios, note);
  const scenarios = new TaskLibrary(ownTasks);
  const lead = openLead({
    data,
    environment,
    opened,
    people,
    pins,
    tasks: scenarios,
    isNetwork: network !== undefined,
    clock,
    note,
  });
  // What lies in the write-ahead file alone goes with it; where nothing is new, nothing is written.
  const idle = setInterval(() => checkpointWhenIdle(opened.records), checkpointEveryMs).unref();
  let isClosed = false;
  const logState = (): Health["log"] => {
    try {
      const eventCount = opened.records.logReader.eventCount();
      return opened.isBesideDamaged ? { state: "damaged", eventCount } : { ...keeper.log, eventCount };
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      return { state: "damaged", eventCount: 0 };
    }
  };
  return {
    parts: {
      bench: {
        board,
        boardBytes: bytes,
        isSimulated,
        scenarios: new ScenarioShelf(scenarios, opened.records, note),
        port,
        clock,
        timers: systemTimers,
        judge,
        rulePackVersion: packVersion,
        softwareVersion: softwareVersion(),
        findings: lead?.packs.findings ?? environment.findings,
        ...(lead ? { lead } : {}),
        showSpeed: environment.showSpeed,
        records: opened.records,
        criteria: readCriteria(data, note),
        people,
        webSessions: new WebSessions(people, () => clock.monotonicMs()),
        isNetworkOpen: network !== undefined,
        isLogDamaged: opened.isBesideDamaged,
        note,
        noBoardSentence: linesSentence,
      },
      kioskFolder: folders.kiosk,
      network,
      lines,
      hasGpioLibrary: hasGpioLibrary(),
      keepYears: environment.keepYears,
      due: () =>
        opened.people
          ? dueLearners(opened.people.reader, opened.reading, environment.keepYears, clock.wallMs())
          : [],
      machine: {
        databasePath: opened.reading.name,
        backUpTo: environment.backUpTo,
        sqliteVersion: sqliteVersionOf(opened.reading),
        notes: () => notes.kept,
      },
      keeping: {
        keeper,
        path: logFile(data),
        passphrase: environment.backUpPassphrase,
        update:
          updateKey === undefined
            ? undefined
            : { publicKey: updateKey, modules: folders.modules, lock: folders.lock },
        startAgain,
      },
      logState,
      backUpState: () => keeper.backUp,
      outboxState: centre.outboxState,
    },
    ready: () => watchdog.ready(),
    readScenarios: () => ownTasks.read(() => isClosed),
    startBesides: ({ damaged, changed }) => {
      keeper.start(damaged);
      centre.start(people, changed);
    },
    close: () => {
      isClosed = true;
      void centre.stop();
      keeper.stop();
      clearInterval(idle);
      opened.records.log.checkpoint();
      opened.reading.close();
      opened.writing.close();
      letGo();
    },
  };
}
