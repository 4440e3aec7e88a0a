import type { Author } from "../../shared/protocol/author.ts";
import type { PackedPerson } from "./packed-person.schema.ts";
import type { PeopleState } from "./people-state.ts";

/** The people of a bench as they go from a lead bench to those it leads. */
export class PeoplePack {
  readonly #state: PeopleState;
  #leadSalt: Uint8Array | undefined;

  constructor(state: PeopleState) {
    this.#state = state;
  }

  /** What badges of a lead's people are looked up under; undefined where nobody was taken over. */
  get leadSalt(): Uint8Array | undefined {
    return this.#leadSalt;
  }

  /** The people of this bench as a lead sends them: with what they are proved by, as it is kept. @throws StoreError */
  forPack(): { people: PackedPerson[]; erased: string[]; badgeSalt: Uint8Array } | undefined {
    const { store } = this.#state;
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
    const { store } = this.#state;
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
    this.#state.changed(reader.hasStaff());
  }
}
