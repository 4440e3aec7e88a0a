import { v7 as uuidV7 } from "uuid";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import type { SensedState } from "../../shared/board/sensed-state.schema.ts";
import type { CableId, StationId } from "../../shared/board/ids.ts";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { Fact } from "../../shared/protocol/bench-view.ts";
import type { SettingKey } from "../../shared/protocol/commands.schema.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { AttemptRun } from "../attempt/attempt-run.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import type { BoardPort } from "../board/scanner-port.ts";
import type { Leads } from "../board/simulated-leads.ts";
import type { Clock, Timers } from "../clock/clock.ts";
import { type BoardCheck, nothingChecked } from "./board-check.ts";
import type { ScenarioKit, ScenarioLibrary } from "../library.ts";
import type { BenchMemory, BenchMemoryReader, BenchMemoryWriter } from "../store/bench-memory.ts";
import type { Learner, LearnerReader } from "../store/learners.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { LogWriter } from "../store/log-writer.ts";
import { StoreError } from "../store/store-error.ts";

/** The records of a bench, readers and writers apart. */
export interface Records {
  log: LogWriter;
  logReader: LogReader;
  learners: LearnerReader;
  memory: BenchMemoryWriter;
  memoryReader: BenchMemoryReader;
}

/** All a bench works with. It opens none of it. */
export interface BenchParts {
  board: BoardDescription;
  boardBytes: Uint8Array;
  isSimulated: boolean;
  scenarios: ScenarioLibrary;
  port: BoardPort;
  clock: Clock;
  timers: Timers;
  judge: (wiring: Wiring) => Verdict;
  rulePackVersion: string;
  softwareVersion: string;
  /** Whether findings are shown when they are asked for, or all the time; practice only. */
  findings: "asked" | "live";
  /** Undefined where the log cannot be read: then nobody can start an attempt, and nothing is written. */
  records: Records | undefined;
  note: (sentence: string) => void;
}

/** Who stands at the bench; a guest has no learner. */
export interface Person {
  learner: Learner | null;
  by: "name" | "badge" | "guest";
}

export type BoardState =
  | { state: "starting" }
  | { state: "no-board"; code: string; facts: Record<string, string | number> }
  | { state: "ready"; hasCodes: boolean; hasProbes: boolean };

/** What undo takes back: the leads as they were, or a size or setting as it was. */
export type Undo =
  | { kind: "leads"; before: Leads }
  | {
      kind: "setting";
      setting: { subject: CableId | StationId; key: SettingKey };
      before: Fact | null;
    };

/** What could not be remembered is tried again after this long. */
const retryMs = 5000;

/** By then the scanner has sensed a simulated lead that was moved. */
const noticedMs = 120;

/**
 * What a bench is at a moment. Commands and sensed states change it through the functions of this folder, one at
 * a time, and then call `publish`.
 */
export class BenchCore {
  revision = 0;
  board: BoardState = { state: "starting" };
  sensed: SensedState | undefined;
  memory: BenchMemory;
  #person: Person | null = null;
  /** New with each person, and after each start. */
  #session: string | null = null;
  /** Who may sign in; looked up when the bench is locked, not with every view. */
  learners: readonly Learner[] = [];
  run: AttemptRun | undefined;
  /** An attempt of before the start, until the board has been sensed. */
  toResume: AttemptState | undefined;
  leads: Leads = new Map();
  undo: Undo[] = [];
  /** A simulated lead was moved so lately that the scanner may not have said so yet. */
  isMoving = false;
  /** A verdict was asked for while a plug may have been half in. */
  isAsked = false;
  selfCheck: { doneCount: number; totalCount: number; isDone: boolean } | undefined;
  /** Called when the first line of a self-check is checked. */
  selfCheckBegun: () => void = () => undefined;
  check: BoardCheck = nothingChecked;
  isLogDamaged: boolean;
  /** What the disk does not take now. */
  readonly #refused = new Set<"log" | "memory">();
  #cancelRetry: (() => void) | undefined;
  #cancelMoving: () => void = () => undefined;
  readonly #listeners = new Set<() => void>();

  constructor(readonly parts: BenchParts) {
    this.isLogDamaged = parts.records === undefined;
    this.learners = parts.records?.learners.all() ?? [];
    this.memory = parts.records?.memoryReader.read() ?? { language: "en", isLarge: false, person: null };
  }

  get person(): Person | null {
    return this.#person;
  }

  set person(person: Person | null) {
    this.#person = person;
    this.#session = person && uuidV7();
  }

  /** Who does what is done on the bench's own screen now. */
  get author(): Author {
    if (!this.#person) return byBench;
    return { by: this.#person.learner ? "learner" : "guest", session: this.#session };
  }

  /** Calls `listener` whenever there is something new to show. Returns what ends it. */
  onPublish(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  publish(): void {
    this.revision += 1;
    for (const listener of this.#listeners) listener();
  }

  /** True where the board is at rest: no plug may be half in. */
  get isSettled(): boolean {
    return this.sensed?.isSettled === true && !this.isMoving;
  }

  /** A simulated lead is moved. The scanner says so soon, and from then on says when the board is at rest. */
  startMoving(): void {
    this.isMoving = true;
    this.#cancelMoving();
    this.#cancelMoving = this.parts.timers.after(noticedMs, () => {
      this.isMoving = false;
      if (this.isSettled) this.settled();
    });
  }

  /** Called when the board has come to rest. */
  settled: () => void = () => undefined;

  get isDiskFull(): boolean {
    return this.#refused.size > 0;
  }

  /** Remembers something over a restart. It holds at once; where the disk is full it is kept once there is room. */
  remember(change: Partial<BenchMemory>): void {
    this.memory = { ...this.memory, ...change };
    this.#keepMemory();
  }

  #keepMemory(): void {
    this.#stopRetry();
    try {
      this.parts.records?.memory.write(this.memory);
      this.trouble(undefined, "memory");
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.#cancelRetry = this.parts.timers.after(retryMs, () => this.#keepMemory());
      this.trouble(error, "memory");
    }
  }

  #stopRetry(): void {
    this.#cancelRetry?.();
    this.#cancelRetry = undefined;
  }

  /** Waits for nothing more; what could not be remembered until now is tried a last time. */
  stop(): void {
    if (!this.#cancelRetry) return;
    this.#keepMemory();
    this.#stopRetry();
  }

  /** Does something with the records. What stands in their way is said, not thrown. */
  guard(act: () => void): void {
    try {
      act();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.trouble(error);
    }
  }

  /** Takes note of what stands in the way of the log or of what the bench remembers; undefined once it works. */
  trouble(error: StoreError | undefined, of: "log" | "memory" = "log"): void {
    const { isDiskFull, isLogDamaged } = this;
    if (error) this.parts.note(`records: ${error.message}`);
    if (error && error.code !== "damaged") this.#refused.add(of);
    else this.#refused.delete(of);
    this.isLogDamaged ||= error?.code === "damaged";
    if (isDiskFull !== this.isDiskFull || isLogDamaged !== this.isLogDamaged) this.publish();
  }

  /** A record of the log is not as it was written: said from now on, and the work goes on. */
  markDamaged(): void {
    this.isLogDamaged = true;
    this.publish();
  }

  /** The run of an attempt whose state is given. */
  runOf(kit: ScenarioKit, state: AttemptState): AttemptRun {
    const { board, timers, judge, records } = this.parts;
    return new AttemptRun(
      {
        kit,
        board,
        timers,
        judge,
        append: (events) => {
          if (!records) throw new StoreError("damaged", {});
          records.log.append(events);
          this.trouble(undefined);
        },
        changed: () => this.publish(),
        troubled: (error) => this.trouble(error),
      },
      state,
    );
  }
}
