import { byBench } from "../../shared/protocol/author.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { DemoPerson } from "../demo/people.ts";
import { refuse } from "../refusal.ts";
import { isSameCode } from "./first-start-code.ts";
import type { Guess } from "./guess-guard.ts";
import type { OtherPerson } from "./other-people.ts";
import { PeopleList } from "./people-list.ts";
import { PeoplePack } from "./people-pack.ts";
import { type PeopleParts, PeopleState } from "./people-state.ts";
import { isStaff, type Person, type Staff, type Told } from "./person.ts";
import { TooManyPinsError } from "./pin-hash.ts";

/** Where somebody tries from: the bench's own screen, or an address on the network. */
export type AskedFrom = string;

/** Whom a bench knows, and how they prove who they are. */
export class People {
  /** Who is put on the list, changed and taken off. */
  readonly list: PeopleList;
  /** The people as they go from a lead bench to those it leads. */
  readonly pack: PeoplePack;
  readonly #parts: PeopleParts;
  readonly #state: PeopleState;

  /** @throws StoreError where the list cannot be read. */
  constructor(parts: PeopleParts) {
    this.#parts = parts;
    this.#state = new PeopleState(parts);
    this.list = new PeopleList(this.#state);
    this.pack = new PeoplePack(this.#state);
  }

  /** The code with which the first person is set up; undefined once there is one, and where nobody can be. */
  get firstStartCode(): string | undefined {
    return this.#state.code;
  }

  /** Another whenever the list is another. */
  get revision(): number {
    return this.#state.revision;
  }

  /** True while invented people are there, whose badges everybody may know. */
  get isDemonstration(): boolean {
    return this.#demo.length > 0;
  }

  get #demo(): readonly DemoPerson[] {
    return this.#state.demo;
  }

  get #others(): readonly OtherPerson[] {
    return this.#parts.others?.all() ?? [];
  }

  /** Everybody who may be chosen by name, learners and staff. @throws StoreError */
  all(): Person[] {
    const known = this.#parts.store?.reader.all() ?? [];
    return [...this.#demo, ...known].map(({ id, name, role }) => ({ id, name, role }));
  }

  /** Those of the staff who have a PIN. */
  unlockers(): Staff[] {
    const { store } = this.#parts;
    const known: Person[] = store?.reader.all() ?? [];
    return known.filter(isStaff).filter(({ id }) => store?.reader.pinHashOf(id) !== undefined);
  }

  /** Those of the staff who decide on work, by name. */
  assessors(): Staff[] {
    const known: readonly Person[] = [...this.#demo, ...(this.#parts.store?.reader.all() ?? [])];
    return known
      .filter(isStaff)
      .filter(({ role }) => role === "assessor")
      .sort((a, b) => a.name.localeCompare(b.name));
  }

  byId(id: string): Person | undefined {
    return this.#demo.find((person) => person.id === id) ?? this.#parts.store?.reader.byId(id);
  }

  /** What is told of somebody; undefined for whoever is not on the list any more. @throws StoreError */
  toldOf(id: string): Told | undefined {
    const demo = this.#demo.find((person) => person.id === id);
    if (demo) return { name: demo.name, centreNumber: "" };
    const { store, others } = this.#parts;
    const known = store?.reader.byId(id);
    if (!known) return others?.byId(id)?.told;
    return { name: known.name, centreNumber: known.centreNumber, adjustments: known.adjustments };
  }

  /** The ids of learners whose name or centre number has a text in it, whatever its case. @throws StoreError */
  learnersLike(text: string): string[] {
    const sought = text.toLowerCase();
    const demo = this.#demo.map((person) => ({ ...person, centreNumber: "" }));
    const others = this.#others.map((person) => ({ ...person, centreNumber: person.told.centreNumber }));
    return [...demo, ...(this.#parts.store?.reader.all() ?? []), ...others]
      .filter(({ role }) => role === "learner")
      .filter(({ name, centreNumber }) => `${name}\n${centreNumber}`.toLowerCase().includes(sought))
      .map(({ id }) => id);
  }

  /** The name of each learner by their id. @throws StoreError */
  learnerNames(): Map<string, string> {
    const all = [...this.#others, ...this.#demo, ...(this.#parts.store?.reader.all() ?? [])];
    return new Map(all.flatMap(({ id, name, role }) => (role === "learner" ? [[id, name] as const] : [])));
  }

  /** Who shows this badge. @throws TooManyPinsError */
  async byBadge(badge: string, askedFrom: AskedFrom): Promise<Person | Refusal> {
    const { guard } = this.#parts;
    const guesses: Guess[] = [{ of: "address", name: askedFrom }];
    const seconds = guard.tried(guesses);
    if (seconds > 0) return refuse("wait-to-try", { seconds });
    const found = this.#state.demoOfBadge(badge) ?? (await this.#knownOfBadge(badge));
    if (!found) return refuse("unknown-badge");
    guard.met(guesses);
    return found;
  }

  /** The person who is chosen, where the PIN is theirs. */
  async byPin(id: string, pin: string, askedFrom: AskedFrom): Promise<Staff | Refusal> {
    const { guard, pins, store } = this.#parts;
    const guesses: Guess[] = [
      { of: "person", name: `${id} from ${askedFrom === ownScreen ? askedFrom : "the network"}` },
      { of: "address", name: askedFrom },
    ];
    const seconds = guard.tried(guesses);
    if (seconds > 0) return refuse("wait-to-try", { seconds });
    const person = store?.reader.byId(id);
    const isRight = await pins.matches(store?.reader.pinHashOf(id), pin);
    if (!person || !isStaff(person) || !isRight) return refuse("wrong-pin");
    guard.met(guesses);
    return person;
  }

  /** Sets the first person up, a technician, who lets the others in. The code is used up. */
  async setUp(code: string, name: string, pin: string, askedFrom: AskedFrom): Promise<Staff | Refusal> {
    const { guard } = this.#parts;
    const guesses: Guess[] = [{ of: "address", name: `first start from ${askedFrom}` }];
    const seconds = guard.tried(guesses);
    if (seconds > 0) return refuse("wait-to-try", { seconds });
    if (this.#state.code === undefined) return refuse("set-up-already");
    if (!isSameCode(this.#state.code, code)) return refuse("wrong-code");
    guard.met(guesses);
    const unused = this.#state.code;
    // Not twice, also not while the PIN is being worked out.
    this.#state.code = undefined;
    try {
      const added = await this.list.add({ name, role: "technician", pin }, byBench);
      return "ok" in added ? added : { ...added, role: "technician" };
    } finally {
      if (!this.#state.isSetUp) this.#state.code = unused;
    }
  }

  async #knownOfBadge(badge: string): Promise<Person | undefined> {
    const { store, pins } = this.#parts;
    if (!store) return undefined;
    const mark = await pins.badgeMark(badge, store.marks.salt);
    const found = store.reader.byMark(mark);
    if (found) return found;
    const { leadSalt } = this.pack;
    const fromLead = leadSalt && store.reader.byMark(await pins.badgeMark(badge, leadSalt));
    if (fromLead) return fromLead;
    const older = store.reader.byMark(store.marks.before(badge));
    const record = older && store.reader.record(older.id);
    if (record) store.writer.markBadge(record, mark, byBench);
    return older;
  }
}

/** Where whoever stands at the bench asks from. */
export const ownScreen: AskedFrom = "own screen";

/** What a PIN that cannot be worked out now is refused with. */
export const refusalOfPin = (error: unknown): Refusal => {
  if (error instanceof TooManyPinsError) return refuse("too-fast");
  throw error;
};
