import { type CableId, type ContactId, endsOfConductor } from "../../shared/board/ids.ts";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { HiddenFault } from "../../shared/wiring/hidden-fault.schema.ts";
import type { ResolvedSettings } from "../../shared/wiring/settings.ts";
import type { Change } from "../../shared/scenario/change.ts";
import type { Timers } from "../clock/clock.ts";
import type { ScenarioKit } from "../library.ts";
import {
  changeBetween,
  isJoinedAlike,
  type Plugged,
  type PluggedChange,
} from "../../shared/wiring/plugged.ts";
import { StoreError } from "../store/store-error.ts";
import type { NewEvent } from "../store/log-writer.ts";
import type { AttemptEvent } from "./attempt-events.ts";
import { CableWatch } from "./cable-watch.ts";
import { SetUpCables } from "./set-up-cables.ts";
import { cablesWithFaults, faultsNow } from "./hunt-state.ts";
import type { AttemptState } from "./attempt-state.ts";
import { type Judged, type Picture, pictureOf, type PictureParts } from "./picture-of.ts";
import { leastChangeOf } from "./least-change-of.ts";
import { reduce } from "./reduce.ts";
import type { SizedCable } from "./settings.ts";

export interface AttemptRunParts extends PictureParts {
  timers: Timers;
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
const retryMs = 5000;

/**
 * An attempt while it is worked on: its state as the log tells it, the board as it is sensed now, and what
 * follows from the two. The board may be ahead of the log by what is still being merged, never behind it.
 */
export class AttemptRun {
  readonly #parts: AttemptRunParts;
  #state: AttemptState;
  #plugged: Plugged;
  #picture: Picture | undefined;
  /** What is least to do from a picture: worked out once, for notes, last hint and record ask for it. */
  #least: { picture: Picture; changes: readonly Change[] | undefined } | undefined;
  #cancelLog: (() => void) | undefined;
  readonly #sizes: CableWatch;
  readonly #faults: CableWatch;
  readonly #setUp = new SetUpCables();

  constructor(parts: AttemptRunParts, state: AttemptState) {
    this.#parts = parts;
    this.#state = state;
    this.#plugged = state.plugged;
    this.#sizes = new CableWatch(parts.timers, (cable) => this.#endSize(cable));
    this.#faults = new CableWatch(parts.timers, (cable) =>
      this.#logByItself([{ type: "hidden-fault-ended", content: { cable } }]),
    );
    this.#watchCables();
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

  /** Contacts of leads that are sensed and not in the log yet; none once the work is handed in. */
  get unsavedContacts(): ReadonlySet<ContactId> {
    const change = this.#unlogged();
    return new Set(change?.added.flatMap(endsOfConductor));
  }

  get cables(): readonly SizedCable[] {
    return this.picture.cables;
  }

  get joints(): readonly ContactId[][] {
    return this.picture.joints;
  }

  get settings(): ResolvedSettings {
    return this.picture.settings;
  }

  /** The board as it is drawn and judged at this moment; made once a state. */
  get picture(): Picture {
    this.#picture ??= pictureOf(this.#parts, this.#plugged, this.#state);
    return this.#picture;
  }

  get board(): PictureParts["board"] {
    return this.#parts.board;
  }

  /** The verdict as it would be with other leads in and other settings declared. */
  judgedIf({ plugged, declared }: Pick<AttemptState, "plugged" | "declared">): Judged {
    return pictureOf(this.#parts, plugged, { ...this.#state, declared }).judged();
  }

  /** What is least to do until all is right; undefined where that cannot be told. */
  leastChange(): readonly Change[] | undefined {
    const { picture } = this;
    if (this.#least?.picture !== picture) {
      const changes = leastChangeOf(this.#parts, picture, { ...this.#state, plugged: this.#plugged });
      this.#least = { picture, changes };
    }
    return this.#least.changes;
  }

  /** The verdict of this moment. */
  judged(): Judged {
    return this.picture.judged();
  }

  /** The verdict of this moment with what was named of a hunt in it: what is handed in. */
  judgedAtHandIn(): Judged {
    return pictureOf(this.#parts, this.#plugged, { ...this.#state, status: "handed-in" }).judged();
  }

  /** The hidden faults that meter and load run see now; they never leave the server before the hand-in. */
  get hiddenFaults(): readonly HiddenFault[] {
    const { hunt } = this.#state;
    return hunt ? faultsNow(hunt) : (this.kit.scenario.hiddenFaults ?? []);
  }

  /** The board changed. It is logged when the changes that come with it have been merged. */
  sense(plugged: Plugged): void {
    // What was handed in stays as it was, whoever clears the board afterwards.
    if (this.#state.status === "handed-in") return;
    this.#plugged = plugged;
    this.#picture = undefined;
    this.#watchCables();
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
    this.#watchCables();
  }

  /** Ends the run: what is sensed goes into the log, nothing more is waited for. @throws StoreError */
  stop(): void {
    this.#sizes.stop();
    this.#faults.stop();
    this.#cancelLog?.();
    this.#cancelLog = undefined;
    this.record([], byBench);
  }

  /** How the board as it is sensed differs from the one in the log. */
  #unlogged(): PluggedChange | undefined {
    if (this.#state.status === "handed-in" || this.#state.status === "left") return undefined;
    return changeBetween(this.#state.plugged, this.#plugged);
  }

  #sensedEvent(): AttemptEvent | undefined {
    const change = this.#unlogged();
    if (!change) return undefined;
    const isFull = this.#state.changeCount + 1 >= fullEvery;
    return { type: "sensed", content: { ...change, ...(isFull ? { full: this.#plugged } : {}) } };
  }

  /** What could not be logged stays the difference between board and log, and is tried again. */
  #logByItself(events: readonly AttemptEvent[] = []): void {
    this.#cancelLog = undefined;
    const { status } = this.#state;
    const isUnsaved = this.unsavedContacts.size > 0;
    try {
      this.record(events, byBench);
      this.#parts.troubled(undefined);
      if (isUnsaved || events.length > 0 || this.#state.status !== status) this.#parts.changed();
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.#parts.troubled(error);
      this.#cancelLog ??= this.#parts.timers.after(retryMs, () => this.#logByItself());
      this.#watchCables();
    }
  }

  #watchCables(): void {
    const { declared, hunt } = this.#state;
    const sized = [...declared.values()].filter(({ key }) => key === "csaMm2");
    this.#sizes.watch(
      sized.map(({ subject }) => subject as CableId),
      this.cables,
      this.#plugged,
    );
    const hidden = hunt ? cablesWithFaults(hunt) : [];
    this.#faults.watch(this.#setUp.among(hidden, this.#state, this.cables), this.cables, this.#plugged);
  }

  #endSize(cable: CableId): void {
    this.#logByItself([
      { type: "setting", content: { subject: cable, key: "csaMm2", value: null, by: "sensed" } },
    ]);
  }
}
