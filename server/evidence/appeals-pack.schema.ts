import { z } from "zod";
import { packedDocumentSchema, packedRowSchema } from "./packed-row.schema.ts";

/** What an appeals pack says that it is. */
export const packFormat = "spurwise-appeals-pack-1";

/** An appeals pack as it was saved. Read for ever. */
export const appealsPackSchema = z.strictObject({
  format: z.literal(packFormat),
  judgedAgainBy: z.string(),
  softwareVersion: z.string(),
  attemptId: z.string(),
  /** Null where the bench had no key. */
  publicKey: z.string().nullable(),
  documents: z.array(packedDocumentSchema),
  rows: z.array(packedRowSchema),
});
export type AppealsPack = z.infer<typeof appealsPackSchema>;
