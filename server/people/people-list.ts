import { v7 as uuidV7 } from "uuid";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { Adjustments } from "../../shared/protocol/keep-view.ts";
import type { Refusal } from "../../shared/protocol/reply.ts";
import type { LineFault } from "../files/csv.ts";
import { refuse } from "../refusal.ts";
import { newBadgeCode } from "./badge-code.ts";
import { classListOf, type ListedLearner } from "./class-list.ts";
import type { ListedPerson } from "./other-people.ts";
import type { PeopleState } from "./people-state.ts";
import { isStaff, type Person, type PersonRole } from "./person.ts";
import type { KnownPerson } from "./person-reader.ts";
import { hashOfPerson, type PersonRecord } from "./person-record.ts";
import { isEasyPin, newPin } from "./pin-hash.ts";

/** Somebody to put on the list, as they are typed in. */
export interface TypedPerson {
  name: string;
  role: PersonRole;
  centreNumber?: string | undefined;
  pin?: string | undefined;
  badge?: string | undefined;
}

/** The list of the people of a bench: who is put on it, changed and taken off. */
export class PeopleList {
  readonly #state: PeopleState;

  constructor(state: PeopleState) {
    this.#state = state;
  }

  /** Puts somebody on the list. @throws StoreError; then nobody was added. */
  async add(typed: TypedPerson, author: Author): Promise<Person | Refusal> {
    const { store, pins } = this.#state;
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
    this.#state.changed(role !== "learner");
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
    this.#state.store?.writer.add(
      learners.map(({ name, centreNumber, badge }) => {
        const badgeMark = badge === undefined ? undefined : marks.get(badge);
        return { id: uuidV7(), role: "learner", name, centreNumber, ...(badgeMark ? { badgeMark } : {}) };
      }),
      author,
    );
    this.#state.changed();
    return { addedCount: learners.length };
  }

  /** The marks of the badges of a class list, and what stands against it. */
  async #marked(
    learners: readonly ListedLearner[],
  ): Promise<{ faults: LineFault[]; marks: ReadonlyMap<string, Buffer> }> {
    const { store, pins } = this.#state;
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
    return (this.#state.store?.reader.all() ?? []).filter(({ role }) => role === "learner");
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
    const { store, pins } = this.#state;
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
    this.#state.changed();
    return given;
  }

  /** Keeps what was agreed with a learner. @throws StoreError */
  adjust(id: string, adjustments: Adjustments, author: Author): Refusal | undefined {
    const { store } = this.#state;
    const known = store?.reader.byId(id);
    const record = known?.role === "learner" ? store?.reader.record(id) : undefined;
    if (!store || !known || !record) return refuse("unknown-person");
    store.writer.retell(record, { name: known.name, centreNumber: known.centreNumber, adjustments }, author);
    this.#state.changed();
    return undefined;
  }

  /** Everybody on the list who is no invention, with what is told of them and the hash of their row. @throws StoreError */
  listed(): ListedPerson[] {
    const { store } = this.#state;
    return (store?.reader.all() ?? []).flatMap(({ id, role, name, centreNumber, adjustments }) => {
      const record = store?.reader.record(id);
      const told = { name, centreNumber, ...(adjustments ? { adjustments } : {}) };
      return record ? [{ id, role, told, rowHash: hashOfPerson(record) }] : [];
    });
  }

  /** The class list as it is now, for a spreadsheet. @throws StoreError */
  classList(): string {
    return classListOf(this.#state.store?.reader.all() ?? []);
  }

  /** Takes somebody's name, number, badge and PIN away for good. */
  erase(id: string, author: Author): Refusal | undefined {
    const { store } = this.#state;
    const record = store?.reader.record(id);
    if (!store || !record || record.erased_wall_ms !== null) return refuse("unknown-person");
    if (record.held_wall_ms !== null) return refuse("held");
    const isLast = (role: PersonRole): boolean =>
      store.reader.all().filter((one) => one.role === role).length === 1;
    // Nobody could let anybody in any more.
    if (record.role === "technician" && isLast("technician")) return refuse("last-technician");
    store.writer.erase([record], author);
    this.#state.changed();
    return undefined;
  }

  /** Gives one of the staff another PIN. @throws StoreError; then the old one holds. */
  async renewPin(id: string, pin: string, author: Author): Promise<Refusal | undefined> {
    const { store, pins } = this.#state;
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
    this.#state.changed();
    return undefined;
  }

  /**
   * At the bench's own terminal, where nobody can unlock it any more: the technician of a name gets a new PIN, or is put
   * on the list.
   *
   * @throws StoreError
   */
  async letIn(name: string): Promise<{ pin: string; isNew: boolean } | Refusal> {
    const { store, pins } = this.#state;
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

  /** Whose records are on hold. */
  held(): string[] {
    const known = this.#state.store?.reader.all() ?? [];
    return known.filter(({ isHeld }) => isHeld).map(({ id }) => id);
  }

  /** Keeps somebody past the end of their time, or no longer. */
  hold(id: string, isHeld: boolean, author: Author): Refusal | undefined {
    const { store } = this.#state;
    const record = store?.reader.record(id);
    if (!store || !record || record.erased_wall_ms !== null) return refuse("unknown-person");
    store.writer.hold(record, isHeld, author);
    this.#state.changed();
    return undefined;
  }

  /** True where somebody has this badge, under this mark or under the one of before. */
  #isTaken(badge: string, mark: Uint8Array): boolean {
    const { store } = this.#state;
    const isMarked = store?.reader.byMark(mark) ?? store?.reader.byMark(store.marks.before(badge));
    return isMarked !== undefined || this.#state.demoOfBadge(badge) !== undefined;
  }
}
