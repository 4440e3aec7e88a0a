import { v7 as uuidV7 } from "uuid";
import type { Author } from "../../shared/protocol/author.ts";
import { type Actor, type ActorSession, authorOf } from "../acts/actor.ts";
import type { Timers } from "../clock/clock.ts";
import type { BenchMemory, BenchMemoryReader, BenchMemoryWriter } from "../store/bench-memory.ts";
import type { People } from "../people/people.ts";
import { isStaff, type Person as Known, type Staff } from "../people/person.ts";
import { StoreError } from "../store/store-error.ts";

/** Who works at the bench; a guest has no learner. */
export interface Person {
  learner: Pick<Known, "id" | "name"> | null;
  by: "name" | "badge" | "guest";
}

export interface SessionParts {
  /** Undefined where the records cannot be read. */
  records: { memory: BenchMemoryWriter; memoryReader: BenchMemoryReader } | undefined;
  people: People;
  timers: Timers;
  /** Called with what the disk does not take, and with undefined once it does. */
  troubled: (error: StoreError | undefined) => void;
  /** Called when the screen has locked itself. */
  locked: () => void;
}

/** What could not be remembered is tried again after this long. */
const retryMs = 5000;
/** Whoever of the staff touches nothing for this long is signed out: their rights are not left lying on the screen. */
const staffIdleMs = 180_000;

/** The bench's own screen: who stands at it, who may, and how it is set. It outlives a restart. */
export class Session implements ActorSession {
  readonly audience = "bench";
  readonly #parts: SessionParts;
  #person: Person | null = null;
  /** Whoever of the staff has unlocked the screen; then nobody works at it. */
  #staff: Staff | null = null;
  /** New with each person, and after each start. */
  #id: string | null = null;
  #learners: readonly Known[] = [];
  #unlockers: readonly Staff[] = [];
  #staffList: readonly Staff[] = [];
  #held: readonly string[] = [];
  #lookedUp: number | undefined;
  #memory: BenchMemory;
  #cancelRetry: (() => void) | undefined;
  #cancelIdle: (() => void) | undefined;

  constructor(parts: SessionParts) {
    this.#parts = parts;
    const { records } = parts;
    this.#lookUp();
    this.#memory = records?.memoryReader.read() ?? {
      language: "en",
      isLarge: false,
      person: null,
      isNetworkChosen: false,
    };
  }

  get person(): Person | null {
    return this.#person;
  }

  /** Who may sign in; looked up when the bench is locked or the list has changed, not with every view. */
  get learners(): readonly Known[] {
    if (this.#lookedUp !== this.#parts.people.revision) this.#lookUp();
    return this.#learners;
  }

  /** Who of the staff has a PIN; looked up with the learners. */
  get unlockers(): readonly Staff[] {
    if (this.#lookedUp !== this.#parts.people.revision) this.#lookUp();
    return this.#unlockers;
  }

  /** All of the staff; looked up with the learners. */
  get staffList(): readonly Staff[] {
    if (this.#lookedUp !== this.#parts.people.revision) this.#lookUp();
    return this.#staffList;
  }

  /** Whose records are on hold; looked up with the learners. */
  get held(): readonly string[] {
    if (this.#lookedUp !== this.#parts.people.revision) this.#lookUp();
    return this.#held;
  }

  get staff(): Staff | null {
    return this.#staff;
  }

  get memory(): Readonly<BenchMemory> {
    return this.#memory;
  }

  get actor(): Actor {
    if (this.#staff)
      return { kind: this.#staff.role, learner: null, session: this.#id, staff: this.#staff.id };
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

  /**
   * One of the staff unlocks the screen, in a session that is new; nobody works at it meanwhile. Neither outlives a
   * restart.
   */
  unlock(staff: Staff, sessionId: string): void {
    this.#set(null);
    this.#staff = staff;
    this.#id = sessionId;
    this.#lookUp();
    this.remember({ person: null });
    this.touch();
  }

  /** Somebody is there: the screen does not lock itself yet. */
  touch(): void {
    this.#cancelIdle?.();
    this.#cancelIdle = undefined;
    if (!this.#staff) return;
    this.#cancelIdle = this.#parts.timers.after(staffIdleMs, () => {
      this.signOut();
      this.#parts.locked();
    });
  }

  /** Nobody stands at the bench any more. */
  signOut(): void {
    this.#set(null);
    this.#lookUp();
    this.remember({ person: null });
  }

  #lookUp(): void {
    const { people } = this.#parts;
    this.#lookedUp = people.revision;
    const all = people.all();
    this.#learners = all.filter((person) => !isStaff(person));
    this.#staffList = all.filter(isStaff);
    this.#held = people.list.held();
    this.#unlockers = people.unlockers();
  }

  /** Whoever stood at the bench when it stopped stands there again, where the class list still has them. */
  comeBack(): void {
    const { person } = this.#memory;
    if (!person) return;
    if (person.learnerId === null) return this.#set({ learner: null, by: "guest" });
    const known = this.#parts.people.byId(person.learnerId);
    this.#set(known && !isStaff(known) ? { learner: known, by: person.by } : null);
  }

  #set(person: Person | null): void {
    this.#staff = null;
    this.touch();
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
    this.#cancelIdle?.();
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
