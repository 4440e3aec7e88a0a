import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import { AttemptRun } from "../attempt/attempt-run.ts";
import type { AttemptState } from "../attempt/attempt-state.ts";
import type { BoardPort } from "../board/scanner-port.ts";
import type { Criteria } from "../desk/criteria.ts";
import { ShownDecisions } from "../desk/shown-decisions.ts";
import type { Clock, Timers } from "../clock/clock.ts";
import { BoardNow, type NoBoard } from "./board-now.ts";
import { Hold } from "./hold.ts";
import { Landing } from "./landing.ts";
import { RecordsHealth } from "./records-health.ts";
import { Session } from "./session.ts";
import type { LeadParts } from "../lead/lead-parts.ts";
import { Work } from "./work.ts";
import type { ScenarioShelf } from "../author/scenario-shelf.ts";
import type { ScenarioKit } from "../library.ts";
import type { AttemptReader } from "../store/attempt-reader.ts";
import type { BenchMemoryReader, BenchMemoryWriter } from "../store/bench-memory.ts";
import type { KeptScenarios } from "../store/kept-scenarios.ts";
import type { People } from "../people/people.ts";
import type { LogReader } from "../store/log-reader.ts";
import type { LogWriter } from "../store/log-writer.ts";
import type { WebSessions } from "../web/web-sessions.ts";
import { challengeKit, isSolved } from "../show/challenge.ts";
import { Show, type ShowCounts } from "../show/show.ts";
import { isBenchInUse } from "./is-bench-in-use.ts";
import { StoreError } from "../store/store-error.ts";

/** The records of a bench, readers and writers apart. */
export interface Records {
  log: LogWriter;
  logReader: LogReader;
  attempts: AttemptReader;
  memory: BenchMemoryWriter;
  memoryReader: BenchMemoryReader;
  /** Which scenarios of its own the bench has. */
  ownScenarios: KeptScenarios;
}

/** All a bench works with. It opens none of it. */
export interface BenchParts {
  board: BoardDescription;
  boardBytes: Uint8Array;
  isSimulated: boolean;
  scenarios: ScenarioShelf;
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
  /** The bench's own log is damaged and `records` are beside it: for practice, never for assessed work. */
  isLogDamaged?: boolean;
  /** What assessors decide by. */
  criteria: Criteria;
  /** Whom the bench knows. */
  people: People;
  /** Who is signed in from the network. */
  webSessions: WebSessions;
  /** What it leads a workshop with, and what it is led by; undefined where it does neither. */
  lead?: LeadParts;
  /** The show goes so many times as fast; one where left out. For checks. */
  showSpeed?: number;
  /** The network was let in at this start. */
  isNetworkOpen: boolean;
  note: (sentence: string) => void;
  /** Why there is no board and what to do, for whoever reads the terminal or the journal. */
  noBoardSentence: (why: NoBoard) => string;
}

/**
 * One bench at a moment: its board, whoever stands at it, the work that lies on it, and how its records are. Each
 * is changed by its own functions alone, one command or sensed state at a time; then `publish` is called.
 */
export class BenchCore {
  readonly board: BoardNow;
  readonly session: Session;
  readonly work = new Work();
  readonly health: RecordsHealth;
  readonly shown: ShownDecisions;
  readonly hold: Hold;
  readonly show: Show;
  readonly landing: Landing;
  #revision = 0;
  /** Something is to be shown once a cable is in. */
  #isHeldBack = false;
  readonly #listeners = new Set<() => void>();

  /** `cameToRest` is called when the board has come to rest. */
  constructor(
    readonly parts: BenchParts,
    readonly cameToRest: () => void,
  ) {
    const { records, timers, note } = parts;
    this.health = new RecordsHealth(records === undefined || parts.isLogDamaged === true, note, () =>
      this.publish(),
    );
    this.shown = new ShownDecisions({ records, guard: (act) => this.health.guard(act) });
    this.session = new Session({
      records,
      people: parts.people,
      timers,
      locked: () => this.publish(),
      troubled: (error) => this.health.trouble(error, "memory"),
    });
    this.landing = new Landing(timers, () => {
      if (this.#isHeldBack) this.publish();
    });
    this.hold = new Hold({ clock: parts.clock, timers, changed: () => this.publish() });
    const { lastSelfCheck } = this.session.memory;
    this.board = new BoardNow(lastSelfCheck?.board === parts.board.id ? lastSelfCheck : undefined);
    this.show = new Show({
      timers,
      nowMs: () => parts.clock.monotonicMs(),
      speed: parts.showSpeed ?? 1,
      isSolved: (plugged) => {
        const kit = challengeKit(parts.scenarios, parts.board);
        return kit !== undefined && isSolved({ kit, board: parts.board, judge: parts.judge }, plugged);
      },
      keepCounts: (counts) => this.#keepShowCounts(counts),
      changed: () => this.publish(),
    });
  }

  /** Counts what was published. */
  get revision(): number {
    return this.#revision;
  }

  /** Calls `listener` whenever there is something new to show. Returns what ends it. */
  onPublish(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Shows everybody how it stands; while a cable goes in, as soon as it is in. */
  publish(): void {
    // Who comes to work at the bench has it to themselves, and without a board there is nothing to try.
    if (this.show.phase.name !== "story" && (isBenchInUse(this) || !this.board.isReady)) this.show.leave();
    this.#revision += 1;
    this.#isHeldBack = this.landing.isUnderWay;
    if (this.#isHeldBack) return;
    for (const listener of this.#listeners) listener();
  }

  #keepShowCounts(counts: ShowCounts): void {
    const { records } = this.parts;
    this.health.guard(() => {
      records?.log.append([
        { attemptId: null, type: "show-counted", author: byBench, content: { ...counts } },
      ]);
    });
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
          this.health.trouble(undefined);
        },
        changed: () => this.publish(),
        troubled: (error) => this.health.trouble(error),
      },
      state,
    );
  }
}
