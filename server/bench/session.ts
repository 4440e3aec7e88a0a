import { v7 as uuidV7 } from "uuid";
import type { Author } from "../../shared/protocol/author.ts";
import { type Actor, type ActorSession, authorOf } from "../acts/actor.ts";
import type { Timers } from "../clock/clock.ts";
import type { BenchMemory, BenchMemoryReader, BenchMemoryWriter } from "../store/bench-memory.ts";
import type { Learner, LearnerReader } from "../store/learners.ts";
import { StoreError } from "../store/store-error.ts";

/** Who stands at the bench; a guest has no learner. */
export interface Person {
  learner: Learner | null;
  by: "name" | "badge" | "guest";
}

export interface SessionParts {
  /** Undefined where the records cannot be read. */
  records:
    { learners: LearnerReader; memory: BenchMemoryWriter; memoryReader: BenchMemoryReader } | undefined;
  timers: Timers;
  /** Called with what the disk does not take, and with undefined once it does. */
  troubled: (error: StoreError | undefined) => void;
}

/** What could not be remembered is tried again after this long. */
const retryMs = 5000;

/** The bench's own screen: who stands at it, who may, and how it is set. It outlives a restart. */
export class Session implements ActorSession {
  readonly audience = "bench";
  readonly #parts: SessionParts;
  #person: Person | null = null;
  /** New with each person, and after each start. */
  #id: string | null = null;
  #learners: readonly Learner[];
  #memory: BenchMemory;
  #cancelRetry: (() => void) | undefined;

  constructor(parts: SessionParts) {
    this.#parts = parts;
    const { records } = parts;
    this.#learners = records?.learners.all() ?? [];
    this.#memory = records?.memoryReader.read() ?? { language: "en", isLarge: false, person: null };
  }

  get person(): Person | null {
    return this.#person;
  }

  /** Who may sign in; looked up when the bench is locked, not with every view. */
  get learners(): readonly Learner[] {
    return this.#learners;
  }

  get memory(): Readonly<BenchMemory> {
    return this.#memory;
  }

  get actor(): Actor {
    if (!this.#person) return { kind: "nobody", learner: null, session: null };
    const { learner } = this.#person;
    return { kind: learner ? "learner" : "guest", learner: learner?.id ?? null, session: this.#id };
  }

  /** Who does what is done on the bench's own screen now. */
  get author(): Author {
    return authorOf(this.actor);
  }

  /** Somebody works at the bench from now on. */
  signIn(person: Person): void {
    this.#set(person);
    this.remember({ person: { learnerId: person.learner?.id ?? null, by: person.by } });
  }

  /** Nobody stands at the bench any more. */
  signOut(): void {
    this.#set(null);
    this.#learners = this.#parts.records?.learners.all() ?? [];
    this.remember({ person: null });
  }

  /** Whoever stood at the bench when it stopped stands there again, where the class list still has them. */
  comeBack(): void {
    const { person } = this.#memory;
    if (!person) return;
    if (person.learnerId === null) return this.#set({ learner: null, by: "guest" });
    const learner = this.#parts.records?.learners.byId(person.learnerId);
    this.#set(learner ? { learner, by: person.by } : null);
  }

  #set(person: Person | null): void {
    this.#person = person;
    this.#id = person && uuidV7();
  }

  /** Remembers something over a restart. It holds at once; where the disk is full it is kept once there is room. */
  remember(change: Partial<BenchMemory>): void {
    this.#memory = { ...this.#memory, ...change };
    this.#keep();
  }

  /** Waits for nothing more; what could not be remembered until now is tried a last time. */
  stop(): void {
    if (!this.#cancelRetry) return;
    this.#keep();
    this.#stopRetry();
  }

  #keep(): void {
    this.#stopRetry();
    const { records, timers, troubled } = this.#parts;
    try {
      records?.memory.write(this.#memory);
      troubled(undefined);
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      this.#cancelRetry = timers.after(retryMs, () => this.#keep());
      troubled(error);
    }
  }

  #stopRetry(): void {
    this.#cancelRetry?.();
    this.#cancelRetry = undefined;
  }
}
