import { z } from "zod";
import { packedDocumentSchema, packedRowSchema } from "./packed-row.schema.ts";

/** What an archive of a whole bench says that it is. */
export const archiveFormat = "spurwise-archive-2";

/** A line of an archive as it was saved. Read for ever. */
export const archiveLineSchema = z.union([
  z.strictObject({
    format: z.literal(archiveFormat),
    benchId: z.string(),
    softwareVersion: z.string(),
    rulePackVersion: z.string(),
  }),
  z.strictObject({ document: packedDocumentSchema }),
  z.strictObject({ row: packedRowSchema }),
  /** The last line: SHA-256 of all lines before it with their ends, in hexadecimal. */
  z.strictObject({ sha256: z.string() }),
]);
export type ArchiveLine = z.infer<typeof archiveLineSchema>;

/** The last line of an archive. */
export const archiveEnd = (sha256: string): string => `${JSON.stringify({ sha256 })}\n`;
