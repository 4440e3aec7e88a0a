import { z } from "zod";
import { eventTypes, type LogRow } from "../../shared/protocol/log-row.ts";
import { hexOf } from "../store/row-hash.ts";

const bytesIn = (encoding: "hex" | "base64") =>
  z.string().transform((text) => new Uint8Array(Buffer.from(text, encoding)));

/** A row of the log as it goes out in a file: its very bytes in base64, hashes in hexadecimal. Read for ever. */
export const packedRowSchema = z.strictObject({
  benchId: z.string(),
  boot: z.number().int(),
  sequence: z.number().int(),
  attemptId: z.string().nullable(),
  type: z.enum(eventTypes),
  bytes: bytesIn("base64"),
  previousHash: bytesIn("hex"),
  hash: bytesIn("hex"),
  monotonicMs: z.number().int(),
  wallMs: z.number().int(),
  clockState: z.enum(["synced", "battery", "unsynced"]),
});

/** A document of the log's store as it goes out in a file. */
export const packedDocumentSchema = z.strictObject({ hash: z.string(), bytes: bytesIn("base64") });

/** Packs a row. */
export const packedRow = (row: LogRow): z.input<typeof packedRowSchema> => ({
  benchId: row.benchId,
  boot: row.boot,
  sequence: row.sequence,
  attemptId: row.attemptId,
  type: row.type,
  bytes: Buffer.from(row.bytes).toString("base64"),
  previousHash: hexOf(row.previousHash),
  hash: hexOf(row.hash),
  monotonicMs: row.monotonicMs,
  wallMs: row.wallMs,
  clockState: row.clockState,
});

/** Packs a document. */
export const packedDocument = (hash: string, bytes: Uint8Array): z.input<typeof packedDocumentSchema> => ({
  hash,
  bytes: Buffer.from(bytes).toString("base64"),
});
