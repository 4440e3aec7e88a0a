import { createHash } from "node:crypto";
import type { BoardDescription } from "../../shared/board/board.schema.ts";
import { type CableId, type ContactId, endsOfCable, entryOf } from "../../shared/board/ids.ts";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { Verdict } from "../../shared/rules/verdict.ts";
import { toWiring } from "../../shared/scenario/to-wiring.ts";
import type { ResolvedSettings } from "../../shared/wiring/settings.ts";
import type { Wiring } from "../../shared/wiring/wiring.schema.ts";
import type { Timers } from "../clock/clock.ts";
import type { ScenarioKit } from "../library.ts";
import { cablesOf } from "../sensed/cables-of.ts";
import { changeBetween, groupsOf, isJoinedAlike, type Plugged } from "../sensed/joins.ts";
import { StoreError } from "../store/store-error.ts";
import type { NewEvent } from "../store/log-writer.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import type { AttemptState } from "./attempt-state.ts";
import { reduce } from "./reduce.ts";
import { builtOf, settingsOf, sizeCables, type SizedCable } from "./settings.ts";

/** The wiring of a moment with its verdict. */
export interface Judged {
  wiring: Wiring;
  wiringHash: string;
  verdict: Verdict;
}

export interface AttemptRunParts {
  kit: ScenarioKit;
  board: BoardDescription;
  timers: Timers;
  judge: (wiring: Wiring) => Verdict;
  /** Puts events on the disk. @throws StoreError */
  append: (events: NewEvent[]) => void;
  /** Called when the attempt changed by itself: time went by, or what could not be logged was. */
  changed: () => void;
  /** Called with what stands in the way of the log, and with undefined once it works again. */
  troubled: (trouble: StoreError | undefined) => void;
}

/** Sensed changes within this long are one event of the log. */
const mergeMs = 250;
/** After so many changes the log has a full state again. */
const fullEvery = 50;
/** A declared size ends when its cable has been out for this long. */
const sizeEndsMs = 2000;
const retryMs = 5000;

/** What the board looks like at this moment, as drawn and as judged. */
interface Picture {
  cables: SizedCable[];
  joints: ContactId[][];
  settings: ResolvedSettings;
  judged?: Judged;
}

/**
 * An attempt while it is worked on: its state as the log tells it, the board as it is sensed now, and what
 * follows from the two. The board may be ahead of the log by what is still being merged, never behind it.
 */
export class AttemptRun {
  readonly #parts: AttemptRunParts;
  #state: AttemptState;
  #plugged: Plugged;
  #picture: Picture | undefined;
  #cancelLog: (() => void) | undefined;
  readonly #sizeTimers = new Map<CableId, () => void>();

  constructor(parts: AttemptRunParts, state: AttemptState) {
    this.#parts = parts;
    this.#state = state;
    this.#plugged = state.plugged;
    this.#watchSizes();
  }

  get state(): AttemptState {
    return this.#state;
  }

  get kit(): ScenarioKit {
    return this.#parts.kit;
  }

  /** The board as it is sensed now. */
  get plugged(): Plugged {
    return this.#plugged;
  }

  get cables(): readonly SizedCable[] {
    return this.#look().cables;
  }

  get joints(): readonly ContactId[][] {
    return this.#look().joints;
  }

  get settings(): ResolvedSettings {
    return this.#look().settings;
  }

  /** The verdict of this moment; made once a state. */
  judged(): Judged {
    const picture = this.#look();
    picture.judged ??= this.#judge(picture);
    return picture.judged;
  }

  /** The board changed. It is logged when the changes that come with it have been merged. */
  sense(plugged: Plugged): void {
    // What was handed in stays as it was, whoever clears the board afterwards.
    if (this.#state.status === "handed-in") return;
    this.#plugged = plugged;
    this.#picture = undefined;
    this.#watchSizes();
    this.#cancelLog ??= this.#parts.timers.after(mergeMs, () => this.#logByItself());
  }

  /**
   * Puts events on the disk, what was sensed before them first, and takes them in. A board that is not what it was
   * when it was called ready for check is no longer waited for; what was sensed is by the bench, not by the author.
   *
   * @throws StoreError; then nothing has changed.
   */
  record(events: readonly AttemptEvent[], author: Author): void {
    const sensed = this.#sensedEvent();
    const all = [
      ...(sensed ? [{ event: sensed, author: byBench }] : []),
      ...events.map((event) => ({ event, author })),
    ];
    if (all.length === 0) return;
    const { id } = this.#state;
    const after = (state: AttemptState, event: AttemptEvent): AttemptState =>
      reduce(state, id, event) ?? state;
    let next = all.reduce((state, { event }) => after(state, event), this.#state);
    if (next.readyWith && !isJoinedAlike(next.readyWith, next.plugged)) {
      const ended: AttemptEvent = { type: "ready-ended", content: { reason: "board-changed" } };
      all.push({ event: ended, author: byBench });
      next = after(next, ended);
    }
    this.#parts.append(all.map(({ event, author: by }) => ({ attemptId: id, ...event, author: by })));
    this.#state = next;
    this.#picture = undefined;
    this.#cancelLog?.();
    this.#cancelLog = undefined;
    this.#watchSizes();
  }

  /** Ends the run: what is sensed goes into the log, nothing more is waited for. @throws StoreError */
  stop(): void {
    for (const cancel of this.#sizeTimers.values()) cancel();
    this.#sizeTimers.clear();
    this.#cancelLog?.();
    this.#cancelLog = undefined;
    this.record([], byBench);
  }

  #sensedEvent(): AttemptEvent | undefined {
    if (this.#state.status === "handed-in" || this.#state.status === "left") return undefined;
    const change = changeBetween(this.#state.plugged, this.#plugged);
    if (!change) return undefined;
    const isFull = this.#state.changeCount + 1 >= fullEvery;
    return { type: "sensed", content: { ...change, ...(isFull ? { full: this.#plugged } : {}) } };
  }

  /** What could not be logged stays the difference between board and log, and is tried again. */
  #logByItself(events: readonly AttemptEvent[] = []): void {
    this.#cancelLog = undefined;
    const { status } = this.#state;
    try {
      this.record(events, byBench);
      this.#parts.troubled(undefined);
      if (events.length > 0 || this.#state.status !== status) this.#parts.changed();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.#parts.troubled(error);
      this.#cancelLog ??= this.#parts.timers.after(retryMs, () => this.#logByItself());
      this.#watchSizes();
    }
  }

  #watchSizes(): void {
    const isIn = new Set(this.cables.map(({ id }) => id));
    const sized = [...this.#state.declared.values()].filter(({ key }) => key === "csaMm2");
    const out = new Set(
      sized
        .map(({ subject }) => subject as CableId)
        .filter((cable) => !isIn.has(cable) && !this.#isDoubtful(cable)),
    );
    for (const [cable, cancel] of this.#sizeTimers)
      if (!out.has(cable)) {
        cancel();
        this.#sizeTimers.delete(cable);
      }
    for (const cable of out)
      if (!this.#sizeTimers.has(cable))
        this.#sizeTimers.set(
          cable,
          this.#parts.timers.after(sizeEndsMs, () => this.#endSize(cable)),
        );
  }

  /** True where a bad line may hide the cable: it cannot be said to be out. */
  #isDoubtful(cable: CableId): boolean {
    const ends: string[] = endsOfCable(cable);
    return this.#plugged.unknown.some((contact) => ends.includes(entryOf(contact)));
  }

  #endSize(cable: CableId): void {
    this.#sizeTimers.delete(cable);
    this.#logByItself([
      { type: "setting", content: { subject: cable, key: "csaMm2", value: null, by: "sensed" } },
    ]);
  }

  #look(): Picture {
    if (this.#picture) return this.#picture;
    const { kit, board } = this.#parts;
    const groups = groupsOf(this.#plugged.joins);
    const { cables, joints } = cablesOf(groups, (a, b) => kit.routeBetween(a, b)?.lengthM);
    const settings = settingsOf(kit.stripped, board, cables, this.#plugged, this.#state);
    this.#picture = { cables: sizeCables(cables, kit.stripped, settings), joints, settings };
    return this.#picture;
  }

  #judge({ cables, settings }: Picture): Judged {
    const { kit, board, judge } = this.#parts;
    const wiring = toWiring({
      scenario: kit.stripped,
      board,
      built: builtOf(kit.stripped, cables, settings),
      unknown: this.#plugged.unknown,
      readings: this.#state.readings,
      routeBetween: kit.routeBetween,
    });
    const wiringHash = createHash("sha256").update(JSON.stringify(wiring)).digest("hex");
    return { wiring, wiringHash, verdict: judge(wiring) };
  }
}
