import { createPublicKey } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { linesSentence } from "../hardware/lines/lines-sentence.ts";
import type { LinesKind } from "../hardware/scan/scanner-messages.ts";
import { systemdWatchdog } from "../hardware/scan/systemd-watchdog.ts";
import type { Health } from "../shared/protocol/socket-events.ts";
import { judge } from "../shared/rules/judge.ts";
import { packVersion } from "../shared/rules/pack-version.ts";
import type { Records } from "./bench/bench-core.ts";
import { chosenBoard } from "./board/chosen-board.ts";
import { scannerProcess } from "./board/scanner-process.ts";
import { systemClock, systemTimers } from "./clock/system-clock.ts";
import { readCriteria } from "./desk/read-criteria.ts";
import type { NetworkDoor, ServerParts } from "./create-server.ts";
import type { Environment } from "./environment.ts";
import { dataFolder, folders, logFile } from "./folders.ts";
import { ScenarioShelf } from "./author/scenario-shelf.ts";
import { openHeldRecords } from "./held-records.ts";
import { ScenarioFolder } from "./library.ts";
import type { OpenedRecords } from "./open-records.ts";
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
import type { StartAgain } from "./keeping/desk-tasks.ts";
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
  const { board, bytes } = chosenBoard(environment);
  const data = dataFolder(environment.data);
  const { opened, letGo } = openHeldRecords(data, clock, environment.anchorTo, note);
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
