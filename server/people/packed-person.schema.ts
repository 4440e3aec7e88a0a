import { z } from "zod";
import { personRoles, toldSchema } from "./person.ts";

/** Somebody as a lead sends them to its benches, with what they prove themselves by; a PIN and a badge only as they are kept, never in clear. */
export const packedPersonSchema = z.strictObject({
  id: z.string().min(1).max(64),
  role: z.enum(personRoles),
  ...toldSchema.shape,
  badgeMark: z.base64().nullable(),
  pinHash: z.string().max(300).nullable(),
});
export type PackedPerson = z.infer<typeof packedPersonSchema>;
