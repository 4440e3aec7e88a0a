import { type ChildProcess, fork } from "node:child_process";
import type { Health } from "../../shared/protocol/socket-events.ts";
import type { Clock, Timers } from "../clock/clock.ts";
import type { FromRecordsWorker, RecordsTask } from "./records-task.ts";

interface KeeperParts {
  /** The built program of the process. */
  program: string;
  path: string;
  /** Where nightly back-ups go; undefined where nobody chose a folder. */
  backUpTo: string | undefined;
  /** What they are sealed with; undefined: they are not. */
  passphrase?: string | undefined;
  softwareVersion: string;
  clock: Clock;
  timers: Timers;
  /** How many records there are now. */
  eventCount: () => number;
  note: (sentence: string) => void;
}

const dayMs = 24 * 3_600_000;
const hourMs = 3_600_000;
const heapMb = 64;
const newestKept = 14;

/**
 * Keeps the records beside the bench's work: proves file and chain once the bench listens and then each day, and makes
 * a back-up each day in which something was written. All of it in a process of its own, one thing at a time.
 */
export class RecordsKeeper {
  readonly #parts: KeeperParts;
  #worker: ChildProcess | undefined;
  #isStopped = false;
  #cancel: (() => void) | undefined;
  #log: Omit<Health["log"], "eventCount"> = { state: "checking" };
  #backUp: Health["backUp"];
  #provedAtMs = 0;
  #triedAtMs: number | undefined;
  #backedUpCount = -1;

  constructor(parts: KeeperParts) {
    this.#parts = parts;
  }

  get log(): Omit<Health["log"], "eventCount"> {
    return this.#log;
  }

  /** True while the process is at work. */
  get isBusy(): boolean {
    return this.#worker !== undefined;
  }

  get backUp(): Health["backUp"] {
    return this.#backUp;
  }

  /** Begins; `damaged` is called where a record is not as it was written. */
  start(damaged: () => void): void {
    void this.#check(damaged).then(() => this.#goOn(damaged));
  }

  /**
   * Does a task of whoever asks for it at the desk, once nothing else is done; done when its process has ended. Undefined
   * where something is done already.
   */
  do(task: RecordsTask, hear: (message: FromRecordsWorker) => void): Promise<void> | undefined {
    return this.isBusy || this.#isStopped ? undefined : this.#run(task, hear);
  }

  /** Ends what is done in the process now. */
  stopTask(): void {
    this.#worker?.kill();
  }

  /** Ends the process and waits for nothing more. */
  stop(): void {
    this.#isStopped = true;
    this.#cancel?.();
    this.#worker?.kill();
  }

  #goOn(damaged: () => void): void {
    const { timers, clock } = this.#parts;
    if (this.#isStopped) return;
    this.#cancel = timers.after(hourMs, () => {
      if (this.isBusy) return this.#goOn(damaged);
      const isCheckDue = clock.monotonicMs() - this.#provedAtMs >= dayMs;
      void (isCheckDue ? this.#check(damaged) : this.#backUpIfDue()).then(() => this.#goOn(damaged));
    });
  }

  async #check(damaged: () => void): Promise<void> {
    const { path, clock, note } = this.#parts;
    this.#provedAtMs = clock.monotonicMs();
    await this.#run({ what: "check", path }, (message) => {
      if (message.type === "progress" && this.#log.state === "checking")
        this.#log = { state: "checking", doneCount: message.doneCount };
      if (message.type === "failed" && message.code !== "damaged")
        note(`log: it could not be proved (${message.code}: ${message.reason})`);
      if (message.type !== "proved" && !(message.type === "failed" && message.code === "damaged")) return;
      if (message.type === "proved" && message.isSound) {
        this.#log = { state: "sound" };
        return;
      }
      const { reason } = message;
      const firstBadRecord = message.type === "proved" ? message.firstBadRecord : "the file";
      this.#log = { state: "damaged", firstBadRecord };
      note(`log: first bad record: ${firstBadRecord}: ${reason}`);
      damaged();
    });
    await this.#backUpIfDue();
  }

  /** What is damaged is not put in the place of a good back-up. */
  async #backUpIfDue(): Promise<void> {
    const { backUpTo: to, passphrase, path, softwareVersion, clock, eventCount, note } = this.#parts;
    const nowMs = clock.monotonicMs();
    const isDue = this.#triedAtMs === undefined || nowMs - this.#triedAtMs >= dayMs;
    if (this.#isStopped || to === undefined || this.#log.state !== "sound" || !isDue) return;
    const count = eventCount();
    if (count === this.#backedUpCount) return;
    this.#triedAtMs = nowMs;
    const wallMs = Math.round(clock.wallMs());
    const before = this.#backUp;
    const task: RecordsTask = {
      what: "back-up",
      path,
      to,
      softwareVersion,
      wallMs,
      passphrase,
      keepCount: newestKept,
    };
    await this.#run(task, (message) => {
      if (message.type === "progress") this.#backUp = { state: "making", doneCount: message.doneCount };
      if (message.type === "backed-up") {
        this.#backedUpCount = count;
        this.#backUp = { state: "made", wallMs };
      } else if (message.type === "failed") {
        this.#backUp = { state: "failed", problem: message.code };
        note(`back-up: none could be made in ${to} (${message.code}: ${message.reason})`);
      }
    });
    // The process went away with nothing said: what was before still holds.
    if (this.#backUp?.state === "making") this.#backUp = before;
  }

  /** Does a task in the process; done when that has ended, however it did. */
  #run(task: RecordsTask, hear: (message: FromRecordsWorker) => void): Promise<void> {
    const { program, note } = this.#parts;
    return new Promise((resolve) => {
      // What a thread takes of memory the bench does not get back whole; what a process takes it does.
      const worker = fork(program, [], {
        execArgv: [`--max-old-space-size=${heapMb}`, "--max-semi-space-size=1"],
      });
      this.#worker = worker;
      worker.on("message", (message) => hear(message as FromRecordsWorker));
      worker.once("error", (error) => {
        note(`records: the ${task.what} cannot begin: ${error.message}`);
        // A process that could not be started at all has no end.
        if (worker.pid === undefined) resolve();
      });
      worker.once("close", (code) => {
        if (code !== 0 && !this.#isStopped) note(`records: the ${task.what} ended early (${code})`);
        this.#worker = undefined;
        resolve();
      });
      worker.send(task, () => undefined);
    });
  }
}
