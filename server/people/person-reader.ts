import type { Connection } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError } from "../store/store-error.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import type { Person, Told } from "./person.ts";
import { personColumns, type PersonRecord, personRecordSchema } from "./person-record.ts";
import { unseal } from "./sealed-person.ts";
import type { PersonKeys } from "./secrets.ts";

/** A person with all that their row tells. */
export type KnownPerson = Person &
  Pick<Told, "centreNumber" | "adjustments"> & {
    addedWallMs: number;
    isHeld: boolean;
    hasBadge: boolean;
  };

/** Reads the people of a bench. Erased ones are not there any more. */
export class PersonReader {
  readonly #database: Connection;
  readonly #keys: PersonKeys;

  constructor(database: Connection, keys: PersonKeys) {
    this.#database = database;
    this.#keys = keys;
  }

  /** Everybody, by name. @throws StoreError */
  all(): KnownPerson[] {
    return this.#records("erased_wall_ms IS NULL")
      .map((record) => this.#known(record))
      .sort((a, b) => (a.name === b.name ? (a.id < b.id ? -1 : 1) : a.name < b.name ? -1 : 1));
  }

  byId(id: string): KnownPerson | undefined {
    const [record] = this.#records("erased_wall_ms IS NULL AND person_id = ?", id);
    return record && this.#known(record);
  }

  byMark(mark: Uint8Array): KnownPerson | undefined {
    const [record] = this.#records("erased_wall_ms IS NULL AND badge_mark = ?", mark);
    return record && this.#known(record);
  }

  pinHashOf(id: string): string | undefined {
    const [record] = this.#records("erased_wall_ms IS NULL AND person_id = ?", id);
    return record?.pin_hash ?? undefined;
  }

  /** True once anybody but a learner was put on the list; stays so when they leave: then others let people in. */
  hasStaff(): boolean {
    return this.#records("role <> 'learner'").length > 0;
  }

  /** Who was erased and when: a back-up that is brought back must not bring them back. */
  erased(): { id: string; wallMs: number }[] {
    return this.#records("erased_wall_ms IS NOT NULL").map((record) => ({
      id: record.person_id,
      wallMs: record.erased_wall_ms ?? 0,
    }));
  }

  /** True where badges were marked. */
  hasMarks(): boolean {
    return this.#records("badge_mark IS NOT NULL").length > 0;
  }

  /** Whose name is kept and cannot be read. */
  keyless(): string[] {
    return this.#records("sealed IS NOT NULL")
      .map(({ person_id }) => person_id)
      .filter((id) => !this.#keys.of(id));
  }

  /** A row as it lies there, an erased one too. */
  record(id: string): PersonRecord | undefined {
    return this.#records("person_id = ?", id)[0];
  }

  #records(where: string, ...given: (string | Uint8Array)[]): PersonRecord[] {
    return readThrough(this.#database, () =>
      this.#database
        .prepare(`SELECT ${personColumns} FROM person WHERE ${where}`)
        .all(...given)
        .map((row) => {
          const parsed = parseSafely(personRecordSchema, row);
          if (parsed.success) return parsed.data;
          throw new StoreError("damaged", { path: this.#database.name, reason: "a person is none" });
        }),
    );
  }

  #known(record: PersonRecord): KnownPerson {
    const { person_id: id, role, sealed } = record;
    const key = this.#keys.of(id);
    const told = sealed && key ? unseal(id, sealed, key) : undefined;
    // Without the key nobody can tell the name; whoever it is can still be told apart.
    return {
      id,
      role,
      name: told?.name ?? `? ${id.slice(-4)}`,
      centreNumber: told?.centreNumber ?? "",
      addedWallMs: record.added_wall_ms,
      isHeld: record.held_wall_ms !== null,
      hasBadge: record.badge_mark !== null,
      adjustments: told?.adjustments,
    };
  }
}
