import type { LogRow } from "../../shared/protocol/log-row.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { z } from "zod";
import { eventOfBytes } from "../store/event-bytes.ts";
import type { Connection } from "../store/open-database.ts";
import { hashOfPerson, personColumns, personRecordSchema } from "./person-record.ts";

const keptSchema = z.object({ person: z.string(), row: z.string() });

/** The last hash of each person's row that a log tells of, collected row by row. */
export class PeopleTold {
  readonly #rowOf = new Map<string, string>();

  take(row: LogRow): void {
    if (row.type !== "person-kept") return;
    const kept = parseSafely(keptSchema, eventOfBytes(row.bytes).content);
    if (kept.success) this.#rowOf.set(kept.data.person, kept.data.row);
  }

  /** The first person whose row is not as the log tells, in words; undefined where all are. */
  fault(database: Connection): { person: string; reason: string } | undefined {
    const left = new Map(this.#rowOf);
    for (const row of database.prepare(`SELECT ${personColumns} FROM person ORDER BY person_id`).iterate()) {
      const parsed = parseSafely(personRecordSchema, row);
      const person = String((row as { person_id?: unknown }).person_id);
      if (!parsed.success) return { person, reason: "it is not in the form of a person" };
      const told = left.get(person);
      if (told === undefined) return { person, reason: "the log does not tell of it" };
      if (told !== hashOfPerson(parsed.data)) return { person, reason: "it was changed" };
      left.delete(person);
    }
    const [gone] = left.keys();
    return gone === undefined ? undefined : { person: gone, reason: "it is missing" };
  }
}
