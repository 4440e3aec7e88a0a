import { createHash } from "node:crypto";
import { z } from "zod";
import { personRoles } from "./person.ts";

const bytes = z.custom<Uint8Array>((value) => value instanceof Uint8Array);

/** A row of the table of people as the database gives it. */
export const personRecordSchema = z.object({
  person_id: z.string(),
  role: z.enum(personRoles),
  sealed: bytes.nullable(),
  badge_mark: bytes.nullable(),
  pin_hash: z.string().nullable(),
  added_wall_ms: z.number().int(),
  held_wall_ms: z.number().int().nullable(),
  erased_wall_ms: z.number().int().nullable(),
});
export type PersonRecord = z.infer<typeof personRecordSchema>;

export const personColumns = Object.keys(personRecordSchema.shape).join(", ");

const hex = (value: Uint8Array | null): string | null => value && Buffer.from(value).toString("hex");

/**
 * SHA-256 of a row of the table of people, in hexadecimal: the log holds the last one of each person, so that a name,
 * a badge, a PIN or a part that somebody changed in the table shows. What is sealed goes in as it lies there: the hash
 * tells nobody a name.
 */
export function hashOfPerson(record: PersonRecord): string {
  const { person_id, role, sealed, badge_mark, pin_hash, added_wall_ms, held_wall_ms, erased_wall_ms } =
    record;
  const told = [person_id, role, hex(sealed), hex(badge_mark), pin_hash];
  const times = [added_wall_ms, held_wall_ms, erased_wall_ms];
  return createHash("sha256")
    .update(JSON.stringify(["spurwise person 1", ...told, ...times]))
    .digest("hex");
}
