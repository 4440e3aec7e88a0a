import type { Pool } from "pg";
import { type PersonRole, personRoles } from "../people/person.ts";
import type { PeopleKept, PeopleMessage, Place } from "./centre-messages.schema.ts";
import { isAfter } from "./place-order.ts";
import { inTransaction } from "./migrate-centre.ts";

/** A person as the store has them of one bench. */
export interface SealedPerson {
  benchId: string;
  personId: string;
  role: PersonRole;
  sealed: string;
}

const roleOf = (text: string): PersonRole => personRoles.find((role) => role === text) ?? "learner";

/** The people of a centre's benches, sealed: nobody reads a name with the store alone. */
export class CentrePeople {
  readonly #pool: Pool;

  constructor(pool: Pool) {
    this.#pool = pool;
  }

  /**
   * Takes a bench's list, all of it or nothing. Whoever is not on it any more is taken out; whoever was erased at the centre
   * is not taken in.
   *
   * @throws what the engine gives; then nothing of it was taken.
   */
  async take({ benchId, asOf, key, people, sealed }: PeopleMessage): Promise<PeopleKept> {
    return inTransaction(this.#pool, async (client) => {
      const { rows: benches } = await client.query<{
        centre: string;
        people_boot: number | null;
        people_sequence: number | null;
      }>("SELECT centre, people_boot, people_sequence FROM bench WHERE bench_id = $1 FOR UPDATE", [benchId]);
      const [bench] = benches;
      if (!bench) return { what: "refused", why: "unknown-bench" };
      const { centre, people_boot: boot, people_sequence: sequence } = bench;
      const before: Place | null = boot === null || sequence === null ? null : { boot, sequence };
      if (before && isAfter(before, asOf)) return { what: "older" };
      await client.query("UPDATE bench SET people_boot = $2, people_sequence = $3 WHERE bench_id = $1", [
        benchId,
        asOf.boot,
        asOf.sequence,
      ]);
      await client.query("DELETE FROM person WHERE bench_id = $1 AND person_id <> ALL ($2::text[])", [
        benchId,
        people.map(({ personId }) => personId),
      ]);
      const onList = new Map(people.map((person) => [person.personId, person]));
      const brought = sealed.flatMap((one) => {
        const person = onList.get(one.personId);
        return person ? [{ ...person, sealed: one.sealed }] : [];
      });
      await client.query(
        `INSERT INTO person (bench_id, person_id, centre, role, row_hash, key, sealed)
         SELECT $1, id, $2, role, decode(row_hash, 'hex'), $3, sealed
         FROM unnest($4::text[], $5::text[], $6::text[], $7::text[]) AS new_person (id, role, row_hash, sealed)
         WHERE NOT EXISTS (SELECT 1 FROM person_erased WHERE centre = $2 AND person_id = id)
         ON CONFLICT (bench_id, person_id) DO UPDATE SET role = excluded.role, row_hash = excluded.row_hash,
           key = excluded.key, sealed = excluded.sealed, taken_at = now()`,
        [
          benchId,
          centre,
          key,
          brought.map(({ personId }) => personId),
          brought.map(({ role }) => role),
          brought.map(({ rowHash }) => rowHash),
          brought.map((one) => one.sealed),
        ],
      );
      const { rows: wanted } = await client.query<{ id: string }>(
        `SELECT id FROM unnest($3::text[], $4::text[]) AS listed (id, row_hash)
         WHERE NOT EXISTS (SELECT 1 FROM person_erased WHERE centre = $2 AND person_id = id)
           AND NOT EXISTS (SELECT 1 FROM person WHERE bench_id = $1 AND person_id = id
             AND person.row_hash = decode(listed.row_hash, 'hex') AND key = $5)`,
        [benchId, centre, people.map(({ personId }) => personId), people.map(({ rowHash }) => rowHash), key],
      );
      return { what: "kept", wants: wanted.map(({ id }) => id) };
    });
  }

  /** Everybody of a centre, those that came last first. */
  async of(centre: string): Promise<SealedPerson[]> {
    const { rows } = await this.#pool.query<{
      bench_id: string;
      person_id: string;
      role: string;
      sealed: string;
    }>(
      "SELECT bench_id, person_id, role, sealed FROM person WHERE centre = $1 ORDER BY taken_at DESC, person_id",
      [centre],
    );
    return rows.map(({ bench_id: benchId, person_id: personId, role, sealed }) => ({
      benchId,
      personId,
      role: roleOf(role),
      sealed,
    }));
  }

  /** Takes people out of the store for good; gives of how many something was there. No bench brings them back. */
  async erase(centre: string, personIds: readonly string[]): Promise<number> {
    return inTransaction(this.#pool, async (client) => {
      await client.query(
        `INSERT INTO person_erased (centre, person_id) SELECT $1, unnest($2::text[]) ON CONFLICT DO NOTHING`,
        [centre, personIds],
      );
      const { rows } = await client.query<{ person_id: string }>(
        "DELETE FROM person WHERE centre = $1 AND person_id = ANY ($2::text[]) RETURNING person_id",
        [centre, personIds],
      );
      return new Set(rows.map(({ person_id: id }) => id)).size;
    });
  }

  /** The same at every centre of the store, for those of whom it is not known at which they were. */
  async eraseEverywhere(personIds: readonly string[]): Promise<void> {
    if (personIds.length === 0) return;
    const { rows } = await this.#pool.query<{ id: string }>("SELECT id FROM centre");
    for (const { id } of rows) await this.erase(id, personIds);
  }
}
