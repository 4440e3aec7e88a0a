import type { ChallengeResult } from "../../shared/protocol/show-view.ts";
import type { Language } from "../../shared/text/languages.ts";
import { nothingPlugged, type Plugged } from "../../shared/wiring/plugged.ts";
import type { Timers } from "../clock/clock.ts";
import { story } from "./story.ts";

/** How long one beat of the story stands: four make an idea of seven seconds. */
export const beatMs = 1750;
/** Nobody is there any more after this long without a touch or a lead. */
export const showIdleMs = 45_000;
export const challengeMs = 180_000;
/** What was counted is written down once in so long, and at the end. */
const countEveryMs = 3_600_000;

/** What the show keeps: how often it was tried, and how that ended. */
export interface ShowCounts {
  begun: number;
  won: number;
  lost: number;
  /** Nobody was there any more, or the bench was wanted for something else. */
  left: number;
}

export type ShowPhase =
  | { name: "story" }
  | { name: "asked" }
  /** `endsMs` on a clock that only counts up; undefined until the board is clear. */
  | { name: "challenge"; endsMs: number | undefined }
  | { name: "result"; outcome: ChallengeResult["outcome"]; plugged: Plugged };

export interface ShowParts {
  timers: Timers;
  /** A clock that only counts up. */
  nowMs: () => number;
  /** So many times as fast as people need it; for checks. */
  speed: number;
  /** True where what is plugged is what the challenge asks for. */
  isSolved: (plugged: Plugged) => boolean;
  keepCounts: (counts: ShowCounts) => void;
  changed: () => void;
}

const none: ShowCounts = { begun: 0, won: 0, lost: 0, left: 0 };
const pictures = story.flatMap(({ pictures }, scene) =>
  pictures.map(({ beats = 1 }, frame) => ({ scene, frame, beats })),
);

/**
 * The show of an open day: the story goes on as long as a screen shows it, a touch ends it, a challenge is won, lost or
 * left. It has no person and writes nothing but counts. It moves by timers alone, and one of each kind waits at most.
 */
export class Show {
  readonly #parts: ShowParts;
  #phase: ShowPhase = { name: "story" };
  #at = 0;
  #language: Language | undefined;
  #plugged: Plugged = nothingPlugged;
  #screenCount = 0;
  #counts = none;
  #cancelBeat: (() => void) | undefined;
  #cancelIdle: (() => void) | undefined;
  #cancelEnd: (() => void) | undefined;
  #cancelCounts: (() => void) | undefined;

  constructor(parts: ShowParts) {
    this.#parts = parts;
  }

  get phase(): ShowPhase {
    return this.#phase;
  }

  /** The picture of the story that is looked at. */
  get at(): { scene: number; frame: number } {
    const { scene, frame } = pictures[this.#at] ?? { scene: 0, frame: 0 };
    return { scene, frame };
  }

  /** What whoever stands there chose; undefined while nobody has. */
  get language(): Language | undefined {
    return this.#language;
  }

  /** The board as it was last sensed. */
  get plugged(): Plugged {
    return this.#plugged;
  }

  /** Time that is left of the challenge. */
  get leftMs(): number | undefined {
    if (this.#phase.name !== "challenge" || this.#phase.endsMs === undefined) return undefined;
    return Math.max(0, (this.#phase.endsMs - this.#parts.nowMs()) * this.#parts.speed);
  }

  /** A screen shows it, until what comes back is called. */
  watch(): () => void {
    this.#screenCount += 1;
    this.#turnPages();
    let isOn = true;
    return () => {
      if (!isOn) return;
      isOn = false;
      this.#screenCount -= 1;
      if (this.#screenCount === 0) this.#stopPages();
    };
  }

  /** Somebody is there. */
  touch(): void {
    if (this.#phase.name === "story") this.#go({ name: "asked" });
    this.#stay();
  }

  speak(language: Language): void {
    this.#language = language;
    this.touch();
  }

  /** The challenge begins: at once on a clear board, otherwise when it is clear. */
  begin(): void {
    this.#count("begun");
    this.#go({ name: "challenge", endsMs: undefined });
    this.#stay();
    this.#startIfClear();
  }

  /** Whoever tries it says that it is done, or the time is over. */
  finish(): void {
    if (this.#phase.name !== "challenge") return;
    const isWon = this.#phase.endsMs !== undefined && this.#parts.isSolved(this.#plugged);
    this.#end(isWon ? "won" : "lost");
  }

  /** Back to the story: nobody is there, or the bench is wanted. */
  leave(): void {
    if (this.#phase.name === "challenge") this.#count("left");
    this.#language = undefined;
    if (this.#phase.name !== "story") this.#go({ name: "story" });
    this.#at = 0;
    this.#turnPages();
  }

  /** What is plugged now. Whoever moves a lead is there; what is right is seen when the board is at rest. */
  sense(plugged: Plugged, isSettled: boolean): void {
    const isOther = JSON.stringify(plugged.joins) !== JSON.stringify(this.#plugged.joins);
    this.#plugged = plugged;
    if (this.#phase.name !== "challenge") return;
    if (isOther) this.#stay();
    if (!isSettled) return;
    if (this.#phase.endsMs === undefined) this.#startIfClear();
    else if (this.#parts.isSolved(plugged)) this.#end("won");
  }

  /** Waits for nothing more, and writes down what was counted. */
  stop(): void {
    this.#stopPages();
    for (const cancel of [this.#cancelIdle, this.#cancelEnd]) cancel?.();
    this.#writeCounts();
  }

  #after(delayMs: number, run: () => void): () => void {
    return this.#parts.timers.after(delayMs / this.#parts.speed, run);
  }

  #startIfClear(): void {
    if (this.#plugged.joins.length > 0 || this.#plugged.unknown.length > 0) return;
    this.#phase = { name: "challenge", endsMs: this.#parts.nowMs() + challengeMs / this.#parts.speed };
    this.#cancelEnd?.();
    this.#cancelEnd = this.#after(challengeMs, () => this.finish());
    this.#parts.changed();
  }

  #end(outcome: ChallengeResult["outcome"]): void {
    this.#count(outcome);
    this.#go({ name: "result", outcome, plugged: this.#plugged });
    this.#stay();
  }

  #go(phase: ShowPhase): void {
    this.#phase = phase;
    this.#stopPages();
    this.#cancelEnd?.();
    this.#cancelEnd = undefined;
    if (phase.name === "story") {
      this.#cancelIdle?.();
      this.#cancelIdle = undefined;
    }
    this.#parts.changed();
  }

  #stay(): void {
    this.#cancelIdle?.();
    this.#cancelIdle = this.#after(showIdleMs, () => this.leave());
  }

  #turnPages(): void {
    if (this.#cancelBeat || this.#screenCount === 0 || this.#phase.name !== "story") return;
    this.#cancelBeat = this.#after((pictures[this.#at]?.beats ?? 1) * beatMs, () => {
      this.#cancelBeat = undefined;
      this.#at = (this.#at + 1) % pictures.length;
      this.#turnPages();
      this.#parts.changed();
    });
  }

  #stopPages(): void {
    this.#cancelBeat?.();
    this.#cancelBeat = undefined;
  }

  #count(what: keyof ShowCounts): void {
    this.#counts = { ...this.#counts, [what]: this.#counts[what] + 1 };
    this.#cancelCounts ??= this.#parts.timers.after(countEveryMs, () => this.#writeCounts());
  }

  #writeCounts(): void {
    this.#cancelCounts?.();
    this.#cancelCounts = undefined;
    if (this.#counts === none) return;
    this.#parts.keepCounts(this.#counts);
    this.#counts = none;
  }
}
