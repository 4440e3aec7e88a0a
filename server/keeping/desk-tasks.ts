import { rmSync } from "node:fs";
import { basename, dirname } from "node:path";
import type { Author } from "../../shared/protocol/author.ts";
import type { TaskKind, TaskView } from "../../shared/protocol/keep-view.ts";
import type { Clock } from "../clock/clock.ts";
import { schemaVersion } from "../store/open-database.ts";
import { chooseIncoming, incomingIn } from "../update/programs.ts";
import { unfinishedIn } from "./back-up.ts";
import { besideOf } from "./make-ready.ts";
import type { RecordsKeeper } from "./records-keeper.ts";
import type { FromRecordsWorker, RecordsTask, UpdateTask } from "./records-task.ts";
import { wantAtStart } from "./restore.ts";

/** What is started again: the bench with other records, or another program. */
export type StartAgain = "records" | "program";

/** What tasks are done with, as the program was opened. */
export interface KeepingParts {
  keeper: Pick<RecordsKeeper, "do" | "stopTask">;
  /** The file of the log. */
  path: string;
  /** What back-ups are sealed with where nothing else is typed. */
  passphrase: string | undefined;
  /** What updates are held to; undefined where no key of who publishes them was set. */
  update: Pick<UpdateTask, "publicKey" | "modules" | "lock"> | undefined;
  /** Ends what runs, so that it starts again with what was made ready. */
  startAgain: (what: StartAgain) => void;
}

interface DeskTaskParts extends KeepingParts {
  softwareVersion: string;
  clock: Clock;
  /** Nobody's work would be lost by a start now. */
  isFree: () => boolean;
  isBoardReady: () => boolean;
}

/** What was made ready to take the place of what is there. */
type Ready = Extract<FromRecordsWorker, { type: "ready" | "tried" }>;

/** What a technician lets the bench do with its records, one thing at a time: how far it is, and what stops it. */
export class DeskTasks {
  readonly #parts: DeskTaskParts;
  #view: TaskView | null = null;
  #isStopped = false;

  constructor(parts: DeskTaskParts) {
    this.#parts = parts;
  }

  /** What is done now, or was done last; null before the first. */
  get view(): TaskView | null {
    return this.#view;
  }

  get isGoing(): boolean {
    return this.#view?.state === "going";
  }

  /** Makes a back-up in a folder. False where something else is done. */
  backUp(to: string, passphrase: string | undefined): boolean {
    const { path, softwareVersion, clock } = this.#parts;
    const wallMs = Math.round(clock.wallMs());
    return this.#do("back-up", { what: "back-up", path, to, softwareVersion, wallMs, passphrase }, () => {
      for (const folder of [to, dirname(path)]) rmSync(unfinishedIn(folder), { force: true });
    });
  }

  /**
   * Makes a back-up ready and, but where it is only tried, lets the bench start again with it. False where something else
   * is done.
   */
  restore(from: string, passphrase: string | undefined, author: Author, isTried: boolean): boolean {
    const { path } = this.#parts;
    const task: RecordsTask = { what: "restore", from, path, passphrase, author, isTried };
    const clear = () => rmSync(besideOf(path), { recursive: true, force: true });
    return this.#do(isTried ? "try-restore" : "restore", task, clear, () => {
      if (isTried) return undefined;
      wantAtStart(path);
      return "records";
    });
  }

  /**
   * Takes an update in from a folder, tries it on a copy of the records, and lets it start on trial. False where something
   * else is done, and where no key of who publishes updates is set.
   */
  update(from: string): boolean {
    const { path, softwareVersion, update, isBoardReady } = this.#parts;
    if (!update) return false;
    const data = dirname(path);
    const clear = () => rmSync(incomingIn(data), { recursive: true, force: true });
    const task: RecordsTask = { what: "update", from, path, version: softwareVersion, ...update };
    return this.#do("update", task, clear, (ready) => {
      if (ready.type === "tried")
        chooseIncoming(data, ready.version, { schemaVersion, wasBoardReady: isBoardReady() });
      return "program";
    });
  }

  /** Stops what is done now; nothing of it is left. */
  stop(): void {
    if (!this.isGoing) return;
    this.#isStopped = true;
    this.#parts.keeper.stopTask();
  }

  #do(
    what: TaskKind,
    task: RecordsTask,
    clear: () => void,
    place: (ready: Ready) => StartAgain | undefined = () => undefined,
  ): boolean {
    const before = this.#view;
    this.#isStopped = false;
    this.#view = {
      ...{ what, state: "going", step: "copying", doneCount: 0, totalCount: 0 },
      ...{ problem: null, facts: {} },
    };
    const going = this.#parts.keeper.do(task, (message) => this.#hear(message, clear, place));
    if (!going) {
      this.#view = before;
      return false;
    }
    void going.then(() => {
      if (!this.isGoing) return;
      // The process went away with nothing said.
      clear();
      this.#change(this.#isStopped ? { state: "stopped" } : { state: "failed", problem: "failed" });
    });
    return true;
  }

  #change(change: Partial<TaskView>): void {
    if (this.#view) this.#view = { ...this.#view, ...change };
  }

  #hear(
    message: FromRecordsWorker,
    clear: () => void,
    place: (ready: Ready) => StartAgain | undefined,
  ): void {
    switch (message.type) {
      case "progress": {
        const { step, doneCount, totalCount = 0 } = message;
        return this.#change({ ...(step ? { step } : {}), doneCount, totalCount });
      }
      case "backed-up":
        return this.#change({
          state: "done",
          facts: { name: basename(message.file), rowCount: message.rowCount },
        });
      case "ready":
      case "tried":
        return this.#place(message, clear, place);
      case "failed":
        return this.#change({ state: "failed", problem: message.code, facts: { reason: message.reason } });
      case "proved":
    }
  }

  #place(ready: Ready, clear: () => void, place: (ready: Ready) => StartAgain | undefined): void {
    const { isFree, startAgain } = this.#parts;
    const isTried = this.#view?.what === "try-restore";
    // Somebody may have begun while it was made ready, and whoever stopped it meant it.
    if (this.#isStopped || (!isTried && !isFree())) {
      clear();
      return this.#change(this.#isStopped ? { state: "stopped" } : { state: "failed", problem: "in-use" });
    }
    const { type: _type, ...facts } = ready;
    const again = place(ready);
    this.#change({ state: "done", facts });
    if (again) startAgain(again);
  }
}
