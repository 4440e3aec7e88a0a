import type { Author } from "../../shared/protocol/author.ts";
import type { Connection } from "../store/open-database.ts";
import type { LogWriter, NewEvent } from "../store/log-writer.ts";
import { toStoreError } from "../store/store-error.ts";
import type { PersonRole, Told } from "./person.ts";
import { hashOfPerson, type PersonRecord } from "./person-record.ts";
import { seal } from "./sealed-person.ts";
import type { PersonKeys } from "./secrets.ts";

/** Somebody who is put on the list. */
export interface NewPerson extends Told {
  id: string;
  role: PersonRole;
  /** What the badge is looked up by. */
  badgeMark?: Uint8Array;
  /** As `PinHasher` gives it. */
  pinHash?: string;
}

/** What was done with a person's row, by its name in the log. */
export type PersonChange =
  | "added"
  | "held"
  | "let-go"
  | "erased"
  | "taken-over"
  | "new-pin"
  | "let-in"
  | "badge-marked"
  | "new-badge"
  | "adjusted"
  | "from-lead";

interface WriterParts {
  database: Connection;
  log: LogWriter;
  keys: PersonKeys;
  wallMs: () => number;
}

/** Writes the people of a bench. Each change is an event of the log with the hash of the row it leaves. */
export class PersonWriter {
  readonly #parts: WriterParts;

  constructor(parts: WriterParts) {
    this.#parts = parts;
  }

  /**
   * Puts people on the list, all or none; `alongside` is what else is written with them.
   *
   * @throws StoreError; then nobody was added.
   */
  add(
    people: readonly NewPerson[],
    author: Author,
    what: PersonChange = "added",
    alongside?: () => void,
  ): void {
    const { keys } = this.#parts;
    keys.make(people.map(({ id }) => id));
    this.#keep(
      people.map(({ id, role, name, centreNumber, badgeMark, pinHash }) => ({
        person_id: id,
        role,
        sealed: seal(id, { name, centreNumber }, this.#keyOf(id)),
        badge_mark: badgeMark ?? null,
        pin_hash: pinHash ?? null,
        added_wall_ms: this.#now(),
        held_wall_ms: null,
        erased_wall_ms: null,
      })),
      what,
      author,
      alongside,
    );
  }

  /** Gives a person another PIN, as `PinHasher` keeps it. */
  renewPin(record: PersonRecord, pinHash: string, author: Author, what: PersonChange = "new-pin"): void {
    this.#keep([{ ...record, pin_hash: pinHash }], what, author);
  }

  /** Keeps somebody's badge under another mark. */
  markBadge(record: PersonRecord, badgeMark: Uint8Array, author: Author): void {
    this.#keep([{ ...record, badge_mark: badgeMark }], "badge-marked", author);
  }

  /** Gives people new badges, all or none; the old ones open nothing any more. */
  giveBadges(given: readonly { record: PersonRecord; badgeMark: Uint8Array }[], author: Author): void {
    const changed = given.map(({ record, badgeMark }) => ({ ...record, badge_mark: badgeMark }));
    this.#keep(changed, "new-badge", author);
  }

  /** Keeps something else told of a person, under their own key. */
  retell(record: PersonRecord, told: Told, author: Author): void {
    const sealed = seal(record.person_id, told, this.#keyOf(record.person_id));
    this.#keep([{ ...record, sealed }], "adjusted", author);
  }

  /**
   * Takes people as another bench has them, all or none, with their ids there. `since` gives when somebody was put on the
   * list here, and whether they are held; undefined for who is new.
   */
  takeOver(
    people: readonly NewPerson[],
    since: (id: string) => Pick<PersonRecord, "added_wall_ms" | "held_wall_ms"> | undefined,
    author: Author,
  ): void {
    this.#parts.keys.make(people.map(({ id }) => id));
    const records = people.map(({ id, role, badgeMark, pinHash, ...told }): PersonRecord => ({
      person_id: id,
      role,
      sealed: seal(id, told, this.#keyOf(id)),
      badge_mark: badgeMark ?? null,
      pin_hash: pinHash ?? null,
      added_wall_ms: since(id)?.added_wall_ms ?? this.#now(),
      held_wall_ms: since(id)?.held_wall_ms ?? null,
      erased_wall_ms: null,
    }));
    this.#keep(records, "from-lead", author);
  }

  /** Keeps a person past the end of their time, or no longer. */
  hold(record: PersonRecord, isHeld: boolean, author: Author): void {
    const changed = { ...record, held_wall_ms: isHeld ? this.#now() : null };
    this.#keep([changed], isHeld ? "held" : "let-go", author);
  }

  /**
   * Takes people's names, numbers, badges and PINs away for good: their rows are tombstones, and their keys are
   * destroyed, so that no older copy of the row can be read either.
   */
  erase(records: readonly PersonRecord[], author: Author): void {
    const erased_wall_ms = this.#now();
    this.#keep(
      records.map((record) => ({
        ...record,
        sealed: null,
        badge_mark: null,
        pin_hash: null,
        held_wall_ms: null,
        erased_wall_ms,
      })),
      "erased",
      author,
    );
    this.#parts.keys.destroy(records.map(({ person_id }) => person_id));
  }

  #now(): number {
    return Math.round(this.#parts.wallMs());
  }

  #keyOf(id: string): Buffer {
    const key = this.#parts.keys.of(id);
    if (!key) throw new Error(`person ${id} has no key`);
    return key;
  }

  #keep(records: readonly PersonRecord[], what: PersonChange, author: Author, alongside?: () => void): void {
    if (records.length === 0) return;
    const { database, log } = this.#parts;
    const events = records.map((record): NewEvent => {
      const content = { person: record.person_id, what, role: record.role, row: hashOfPerson(record) };
      return { attemptId: null, type: "person-kept", author, content };
    });
    try {
      const put = database.prepare(`
        INSERT INTO person (person_id, role, sealed, badge_mark, pin_hash, added_wall_ms, held_wall_ms, erased_wall_ms)
        VALUES (@person_id, @role, @sealed, @badge_mark, @pin_hash, @added_wall_ms, @held_wall_ms, @erased_wall_ms)
        ON CONFLICT (person_id) DO UPDATE SET role = excluded.role, sealed = excluded.sealed,
          badge_mark = excluded.badge_mark, pin_hash = excluded.pin_hash, held_wall_ms = excluded.held_wall_ms,
          erased_wall_ms = excluded.erased_wall_ms`);
      log.append(events, () => {
        records.forEach((record) => put.run(record));
        alongside?.();
      });
    } catch (error) {
      throw toStoreError(error, database.name);
    }
  }
}
