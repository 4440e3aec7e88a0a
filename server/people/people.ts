import { v7 as uuidV7 } from "uuid";
import type { Author } from "../../shared/protocol/author.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { DemoPerson } from "../demo/people.ts";
import { refuse } from "../refusal.ts";
import type { LineFault } from "../files/csv.ts";
import { classListOf, type ListedLearner } from "./class-list.ts";
import { isSameCode, newFirstStartCode } from "./first-start-code.ts";
import type { Guess, GuessGuard } from "./guess-guard.ts";
import { isStaff, type Person, type PersonRole, type Staff, type Told } from "./person.ts";
import type { Adjustments } from "../../shared/protocol/keep-view.ts";
import { newBadgeCode } from "./badge-code.ts";
import type { ListedPerson, OtherPeople, OtherPerson } from "./other-people.ts";
import type { KnownPerson, PersonReader } from "./person-reader.ts";
import { hashOfPerson, type PersonRecord } from "./person-record.ts";
import type { PackedPerson } from "./packed-person.schema.ts";
import type { PersonWriter } from "./person-writer.ts";
import { isEasyPin, newPin, type PinHasher, TooManyPinsError } from "./pin-hash.ts";
import type { BadgeMarks } from "./secrets.ts";

export interface PeopleParts {
  /** Undefined beside a log that is damaged: then nobody is known and nobody can be set up. */
  store: { reader: PersonReader; writer: PersonWriter; marks: BadgeMarks } | undefined;
  /** Invented people, on a board that is simulated; they are gone once somebody is set up. */
  demo: readonly DemoPerson[];
  pins: PinHasher;
  guard: GuessGuard;
  /** Those whom the benches of a centre know, at the centre's desk. */
  others?: OtherPeople | undefined;
}

/** Somebody to put on the list, as they are typed in. */
export interface TypedPerson {
  name: string;
  role: PersonRole;
  centreNumber?: string | undefined;
  pin?: string | undefined;
  badge?: string | undefined;
}

/** Where somebody tries from: the bench's own screen, or an address on the network. */
export type AskedFrom = string;

/** Whom a bench knows, and how they prove who they are. */
export class People {
  readonly #parts: PeopleParts;
  #isSetUp: boolean;
  #code: string | undefined;
  #revision = 0;
  #leadSalt: Uint8Array | undefined;

  /** @throws StoreError where the list cannot be read. */
  constructor(parts: PeopleParts) {
    this.#parts = parts;
    this.#isSetUp = parts.store?.reader.hasStaff() ?? false;
    if (parts.store && !this.#isSetUp) this.#code = newFirstStartCode();
  }

  /** The code with which the first person is set up; undefined once there is one, and where nobody can be. */
  get firstStartCode(): string | undefined {
    return this.#code;
  }

  /** Another whenever the list is another. */
  get revision(): number {
    return this.#revision;
  }

  /** True while invented people are there, whose badges everybody may know. */
  get isDemonstration(): boolean {
    return this.#demo.length > 0;
  }

  get #demo(): readonly DemoPerson[] {
    return this.#isSetUp ? [] : this.#parts.demo;
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
    const found = this.#demoOfBadge(badge) ?? (await this.#knownOfBadge(badge));
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
    if (this.#code === undefined) return refuse("set-up-already");
    if (!isSameCode(this.#code, code)) return refuse("wrong-code");
    guard.met(guesses);
    const unused = this.#code;
    // Not twice, also not while the PIN is being worked out.
    this.#code = undefined;
    try {
      const added = await this.add({ name, role: "technician", pin }, byBench);
      return "ok" in added ? added : { ...added, role: "technician" };
    } finally {
      if (!this.#isSetUp) this.#code = unused;
    }
  }

  /** Puts somebody on the list. @throws StoreError; then nobody was added. */
  async add(typed: TypedPerson, author: Author): Promise<Person | Refusal> {
    const { store, pins } = this.#parts;
    if (!store) return refuse("log-damaged");
    const { name, role, centreNumber = "", pin, badge } = typed;
    if (role !== "learner" && pin === undefined && badge === undefined) return refuse("pin-or-badge");
    if (pin !== undefined && isEasyPin(pin)) return refuse("easy-pin");
    const pinHash = pin === undefined ? undefined : await pins.hash(pin);
    const badgeMark = badge === undefined ? undefined : await pins.badgeMark(badge, store.marks.salt);
    if (badge !== undefined && badgeMark && this.#isTaken(badge, badgeMark)) return refuse("badge-taken");
    const id = uuidV7();
    const proofs = { ...(badgeMark ? { badgeMark } : {}), ...(pinHash === undefined ? {} : { pinHash }) };
    store.writer.add([{ id, name, role, centreNumber, ...proofs }], author);
    if (role !== "learner") this.#isSetUp = true;
    if (this.#isSetUp) this.#code = undefined;
    this.#revision += 1;
    return { id, name, role };
  }

  /**
   * What stands against putting the learners of a class list on the list, line by line; nothing is changed.
   *
   * @throws StoreError or TooManyPinsError
   */
  async checkClass(learners: readonly ListedLearner[]): Promise<LineFault[]> {
    return (await this.#marked(learners)).faults;
  }

  /**
   * Puts the learners of a class list on the list, all or none; gives how many there were, or what stands against it
   * line by line.
   *
   * @throws StoreError or TooManyPinsError; then nobody was added.
   */
  async addClass(
    learners: readonly ListedLearner[],
    author: Author,
  ): Promise<{ addedCount: number } | { faults: LineFault[] }> {
    const { faults, marks } = await this.#marked(learners);
    if (faults.length > 0) return { faults };
    this.#parts.store?.writer.add(
      learners.map(({ name, centreNumber, badge }) => {
        const badgeMark = badge === undefined ? undefined : marks.get(badge);
        return { id: uuidV7(), role: "learner", name, centreNumber, ...(badgeMark ? { badgeMark } : {}) };
      }),
      author,
    );
    this.#revision += 1;
    return { addedCount: learners.length };
  }

  /** The marks of the badges of a class list, and what stands against it. */
  async #marked(
    learners: readonly ListedLearner[],
  ): Promise<{ faults: LineFault[]; marks: ReadonlyMap<string, Buffer> }> {
    const { store, pins } = this.#parts;
    const marks = new Map<string, Buffer>();
    if (!store) return { faults: [{ line: 1, message: "the records of this bench are damaged" }], marks };
    for (const { badge } of learners)
      if (badge !== undefined) marks.set(badge, await pins.badgeMark(badge, store.marks.salt));
    const known = new Set(store.reader.all().map(({ name, centreNumber }) => `${name}\n${centreNumber}`));
    const faults = learners.flatMap(({ line, name, centreNumber, badge }): LineFault[] => {
      const mark = badge === undefined ? undefined : marks.get(badge);
      const isTaken = badge !== undefined && mark !== undefined && this.#isTaken(badge, mark);
      return [
        ...(known.has(`${name}\n${centreNumber}`)
          ? [{ line, message: `${name} is on the list already` }]
          : []),
        ...(isTaken ? [{ line, message: "the badge is somebody's already" }] : []),
      ];
    });
    return { faults, marks };
  }

  /** Every learner who is no invention, with what is told of them. @throws StoreError */
  learners(): KnownPerson[] {
    return (this.#parts.store?.reader.all() ?? []).filter(({ role }) => role === "learner");
  }

  /**
   * Makes new badges for learners, all or none, and gives their codes, which nobody can read again.
   *
   * @throws StoreError or TooManyPinsError; then the old badges hold.
   */
  async giveBadges(
    ids: readonly string[],
    author: Author,
  ): Promise<{ id: string; name: string; centreNumber: string; code: string }[] | Refusal> {
    const { store, pins } = this.#parts;
    if (!store) return refuse("log-damaged");
    const wanted = new Set(ids);
    const given = this.learners()
      .filter(({ id }) => wanted.has(id))
      .map(({ id, name, centreNumber }) => ({ id, name, centreNumber, code: newBadgeCode() }));
    if (given.length !== wanted.size) return refuse("unknown-person");
    const marked: { record: PersonRecord; badgeMark: Uint8Array }[] = [];
    for (const { id, code } of given) {
      const badgeMark = await pins.badgeMark(code, store.marks.salt);
      // They may have been erased while it was worked out.
      const record = store.reader.byId(id) && store.reader.record(id);
      if (!record) return refuse("unknown-person");
      marked.push({ record, badgeMark });
    }
    store.writer.giveBadges(marked, author);
    this.#revision += 1;
    return given;
  }

  /** Keeps what was agreed with a learner. @throws StoreError */
  adjust(id: string, adjustments: Adjustments, author: Author): Refusal | undefined {
    const { store } = this.#parts;
    const known = store?.reader.byId(id);
    const record = known?.role === "learner" ? store?.reader.record(id) : undefined;
    if (!store || !known || !record) return refuse("unknown-person");
    store.writer.retell(record, { name: known.name, centreNumber: known.centreNumber, adjustments }, author);
    this.#revision += 1;
    return undefined;
  }

  /** Everybody on the list who is no invention, with what is told of them and the hash of their row. @throws StoreError */
  listed(): ListedPerson[] {
    const { store } = this.#parts;
    return (store?.reader.all() ?? []).flatMap(({ id, role, name, centreNumber, adjustments }) => {
      const record = store?.reader.record(id);
      const told = { name, centreNumber, ...(adjustments ? { adjustments } : {}) };
      return record ? [{ id, role, told, rowHash: hashOfPerson(record) }] : [];
    });
  }

  /** The class list as it is now, for a spreadsheet. @throws StoreError */
  classList(): string {
    return classListOf(this.#parts.store?.reader.all() ?? []);
  }

  /** Takes somebody's name, number, badge and PIN away for good. */
  erase(id: string, author: Author): Refusal | undefined {
    const { store } = this.#parts;
    const record = store?.reader.record(id);
    if (!store || !record || record.erased_wall_ms !== null) return refuse("unknown-person");
    if (record.held_wall_ms !== null) return refuse("held");
    const isLast = (role: PersonRole): boolean =>
      store.reader.all().filter((one) => one.role === role).length === 1;
    // Nobody could let anybody in any more.
    if (record.role === "technician" && isLast("technician")) return refuse("last-technician");
    store.writer.erase([record], author);
    this.#revision += 1;
    return undefined;
  }

  /** Gives one of the staff another PIN. @throws StoreError; then the old one holds. */
  async renewPin(id: string, pin: string, author: Author): Promise<Refusal | undefined> {
    const { store, pins } = this.#parts;
    const isKnown = (): boolean => {
      const person = store?.reader.byId(id);
      return person !== undefined && isStaff(person);
    };
    if (!store || !isKnown()) return refuse("unknown-person");
    if (isEasyPin(pin)) return refuse("easy-pin");
    const pinHash = await pins.hash(pin);
    // They may have been erased while it was worked out.
    const record = isKnown() ? store.reader.record(id) : undefined;
    if (!record) return refuse("unknown-person");
    store.writer.renewPin(record, pinHash, author);
    this.#revision += 1;
    return undefined;
  }

  /**
   * At the bench's own terminal, where nobody can unlock it any more: the technician of a name gets a new PIN, or is put
   * on the list.
   *
   * @throws StoreError
   */
  async letIn(name: string): Promise<{ pin: string; isNew: boolean } | Refusal> {
    const { store, pins } = this.#parts;
    if (!store) return refuse("log-damaged");
    const pin = newPin();
    const pinHash = await pins.hash(pin);
    const same = store.reader.all().find((one) => one.role === "technician" && one.name === name);
    const record = same && store.reader.record(same.id);
    if (record) store.writer.renewPin(record, pinHash, byBench, "let-in");
    else
      store.writer.add(
        [{ id: uuidV7(), name, role: "technician", centreNumber: "", pinHash }],
        byBench,
        "let-in",
      );
    return { pin, isNew: !record };
  }

  /** The people of this bench as a lead sends them: with what they are proved by, as it is kept. @throws StoreError */
  forPack(): { people: PackedPerson[]; erased: string[]; badgeSalt: Uint8Array } | undefined {
    const { store } = this.#parts;
    if (!store) return undefined;
    const people = store.reader.all().map(({ id, role, name, centreNumber = "", adjustments }) => {
      const { badge_mark: mark, pin_hash: pinHash } = store.reader.record(id) ?? {};
      const badgeMark = mark ? Buffer.from(mark).toString("base64") : null;
      const told = { name, centreNumber, ...(adjustments ? { adjustments } : {}) };
      return { id, role, ...told, badgeMark, pinHash: pinHash ?? null };
    });
    return { people, erased: store.reader.erased().map(({ id }) => id), badgeSalt: store.marks.salt };
  }

  /** Badges are looked up under the salt of a lead as well, of which people were taken over. */
  useBadgesUnder(salt: Uint8Array): void {
    this.#leadSalt = salt;
  }

  /**
   * Takes over the people of a lead: who is new or another is written, who was erased there is erased here, but for who is
   * on hold; who was put on the list of this bench alone stays.
   *
   * @throws StoreError
   */
  takeOver(
    { people, erased }: { people: readonly PackedPerson[]; erased: readonly string[] },
    author: Author,
  ): void {
    const { store } = this.#parts;
    if (!store) return;
    const { reader, writer } = store;
    const told = new Map(reader.all().map((person) => [person.id, person]));
    const isSame = ({
      id,
      role,
      name,
      centreNumber = "",
      adjustments,
      badgeMark,
      pinHash,
    }: PackedPerson): boolean => {
      const known = told.get(id);
      const record = reader.record(id);
      const mark = record?.badge_mark ? Buffer.from(record.badge_mark).toString("base64") : null;
      const here = [
        known?.role,
        known?.name,
        known?.centreNumber,
        known?.adjustments,
        mark,
        record?.pin_hash,
      ];
      return (
        JSON.stringify(here) === JSON.stringify([role, name, centreNumber, adjustments, badgeMark, pinHash])
      );
    };
    const others = people.filter(
      (person) => reader.record(person.id)?.erased_wall_ms == null && !isSame(person),
    );
    writer.takeOver(
      others.map(({ badgeMark, pinHash, ...person }) => ({
        ...person,
        ...(badgeMark === null ? {} : { badgeMark: Buffer.from(badgeMark, "base64") }),
        ...(pinHash === null ? {} : { pinHash }),
      })),
      (id) => reader.record(id),
      author,
    );
    const gone = erased.flatMap((id) => reader.record(id) ?? []);
    writer.erase(
      gone.filter((record) => record.erased_wall_ms === null && record.held_wall_ms === null),
      author,
    );
    this.#isSetUp = reader.hasStaff();
    if (this.#isSetUp) this.#code = undefined;
    this.#revision += 1;
  }

  /** Whose records are on hold. */
  held(): string[] {
    const known = this.#parts.store?.reader.all() ?? [];
    return known.filter(({ isHeld }) => isHeld).map(({ id }) => id);
  }

  /** Keeps somebody past the end of their time, or no longer. */
  hold(id: string, isHeld: boolean, author: Author): Refusal | undefined {
    const { store } = this.#parts;
    const record = store?.reader.record(id);
    if (!store || !record || record.erased_wall_ms !== null) return refuse("unknown-person");
    store.writer.hold(record, isHeld, author);
    this.#revision += 1;
    return undefined;
  }

  #demoOfBadge(badge: string): Person | undefined {
    return this.#demo.find((person) => person.badge === badge);
  }

  /** True where somebody has this badge, under this mark or under the one of before. */
  #isTaken(badge: string, mark: Uint8Array): boolean {
    const { store } = this.#parts;
    const isMarked = store?.reader.byMark(mark) ?? store?.reader.byMark(store.marks.before(badge));
    return isMarked !== undefined || this.#demoOfBadge(badge) !== undefined;
  }

  async #knownOfBadge(badge: string): Promise<Person | undefined> {
    const { store, pins } = this.#parts;
    if (!store) return undefined;
    const mark = await pins.badgeMark(badge, store.marks.salt);
    const found = store.reader.byMark(mark);
    if (found) return found;
    const fromLead = this.#leadSalt && store.reader.byMark(await pins.badgeMark(badge, this.#leadSalt));
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
