import { z } from "zod";
import { personRoles } from "../people/person.ts";
import { packedDocumentSchema, packedRowSchema } from "../evidence/packed-row.schema.ts";

/** What goes over the network at once; a row is half a kilobyte, a document some tens. */
export const batchLimits = { rows: 500, documents: 8, bytes: 4 * 1024 * 1024 } as const;

const place = z.strictObject({ boot: z.number().int().min(1), sequence: z.number().int().min(0) });

/** A place in one bench's log. */
export type Place = z.infer<typeof place>;

const head = z.strictObject({ ...place.shape, hash: z.string().regex(/^[0-9a-f]{64}$/) });

/** How far the log of a bench is at the centre, with the hash of its last row there. */
export type Head = z.infer<typeof head>;

/** Rows of one bench in their order, beginning right after a place of its log (null: its beginning), with documents. */
export const batchSchema = z.strictObject({
  benchId: z.string().min(1).max(60),
  after: place.nullable(),
  rows: z.array(packedRowSchema).max(batchLimits.rows),
  documents: z.array(packedDocumentSchema).max(batchLimits.documents),
});
export type Batch = z.infer<typeof batchSchema>;

/**
 * What became of a batch:
 *
 * - `taken`: all of it is durable in the store, or was before; `head` is how far the bench's log is there;
 * - `wants`: documents that its rows were made with are not there: no row of it was taken before they are;
 * - `gap`: something before it is missing: it is to be sent from after `head` on;
 * - `set-aside`: at a place that is known, or that follows the last known one, the log is another than the one that was
 *   sent before. What was sent is kept beside, and nothing more is taken until a technician of the centre has seen to it;
 * - `refused`: the bench is not on the centre's list, the batch is not signed by it, or it is no batch.
 */
export const takenSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("taken"), head: head.nullable() }),
  z.strictObject({ what: z.literal("wants"), hashes: z.array(z.string()).min(1).max(batchLimits.documents) }),
  z.strictObject({ what: z.literal("gap"), head: head.nullable() }),
  z.strictObject({ what: z.literal("set-aside"), at: place }),
  z.strictObject({
    what: z.literal("refused"),
    why: z.enum(["unknown-bench", "not-signed", "no-batch", "broken-row"]),
    at: place.optional(),
  }),
]);
export type Taken = z.infer<typeof takenSchema>;

/** Where a bench sends the rows of its log, and its list of people. */
export const rowsPath = "/centre/rows";
export const peoplePath = "/centre/people";

/** The header that a batch's signature stands in. */
export const signatureHeader = "spurwise-signature";

/** What a bench signs of a batch: the SHA-256 of its bytes in hexadecimal, and what it is of. */
export const signedOf = (sha256: string): string => `batch ${sha256}`;

/** How many people of one bench are told of, and how many are sealed in one message. */
export const peopleLimits = { people: 2000, sealed: 200 } as const;

const personId = z.string().min(1).max(64);

/**
 * Whom a bench has on its list, as it stood when its log was `asOf` that long: everybody with the hash of their row, and some
 * of them sealed for the centre's key `key`. Whoever is not in it any more is taken off at the centre too.
 */
export const peopleSchema = z.strictObject({
  benchId: z.string().min(1).max(60),
  asOf: place,
  key: z.string().max(100),
  people: z
    .array(
      z.strictObject({
        personId,
        role: z.enum(personRoles),
        rowHash: z.string().regex(/^[0-9a-f]{64}$/),
      }),
    )
    .max(peopleLimits.people),
  sealed: z.array(z.strictObject({ personId, sealed: z.string().max(4000) })).max(peopleLimits.sealed),
});
export type PeopleMessage = z.infer<typeof peopleSchema>;

/**
 * What became of a list of people:
 *
 * - `kept`: it is durable in the store; `wants` says who is to be sent sealed;
 * - `older`: the store has one that is later;
 * - `refused`: as for a batch.
 */
export const peopleKeptSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("kept"), wants: z.array(personId).max(peopleLimits.people) }),
  z.strictObject({ what: z.literal("older") }),
  z.strictObject({ what: z.literal("refused"), why: z.enum(["unknown-bench", "not-signed", "no-list"]) }),
]);
export type PeopleKept = z.infer<typeof peopleKeptSchema>;
