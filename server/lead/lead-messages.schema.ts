import { z } from "zod";
import { actorRoles } from "../../shared/protocol/author.ts";

const id = z.string().min(1).max(60);
const key = z.string().min(1).max(200);
const proof = z.string().regex(/^[0-9a-f]{64}$/);
const signature = z.string().min(1).max(200);
const name = z.string().max(80);

/** What a bench says first: that it wants to be paired, or who it is. */
export const firstOfBenchSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("pair"), benchId: id, benchKey: key, name }),
  z.strictObject({ what: z.literal("link"), benchId: id, signature }),
]);
export type FirstOfBench = z.infer<typeof firstOfBenchSchema>;

/** What a lead answers to who wants to be paired; `refused`: no code is shown there now. */
export const pairAnswerSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("lead"), leadId: id, leadKey: key, name }),
  z.strictObject({ what: z.literal("refused"), why: z.enum(["no-code", "wrong-code", "unknown-bench"]) }),
]);
export const pairProofSchema = z.strictObject({ what: z.literal("proof"), proof, signature });

/** What a lead answers to a bench that it knows. */
export const linkAnswerSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("linked"), signature }),
  z.strictObject({ what: z.literal("refused"), why: z.enum(["no-code", "wrong-code", "unknown-bench"]) }),
]);

const boundedJson = z.record(z.string(), z.unknown());

/** A pack of a group, as `group-pack.ts` signs it. */
export const sealedPackSchema = z.strictObject({ bytes: z.base64(), signature });
export type SealedPack = z.infer<typeof sealedPackSchema>;

/** What a linked bench says: how it is, whole or as it changed, and what became of an order. */
export const fromBenchSchema = z.discriminatedUnion("what", [
  z.strictObject({ what: z.literal("report"), report: boundedJson }),
  z.strictObject({ what: z.literal("change"), change: boundedJson }),
  z.strictObject({
    what: z.literal("reply"),
    order: z.number().int(),
    isDone: z.boolean(),
    code: z.string().max(60).optional(),
  }),
  z.strictObject({ what: z.literal("here") }),
]);
export type FromBench = z.infer<typeof fromBenchSchema>;

/** What a trainer at the lead may have a bench do. */
export const orderActs = ["freeze-bench", "set-time", "reset-bench"] as const;
export type OrderAct = (typeof orderActs)[number];

/** What the lead says to a linked bench. */
export const fromLeadSchema = z.discriminatedUnion("what", [
  z.strictObject({
    what: z.literal("order"),
    order: z.number().int(),
    act: z.enum(orderActs),
    message: boundedJson,
    /** Who gives it at the lead, by their id there, and their session in the lead's log. */
    by: z.strictObject({ role: z.enum(actorRoles), person: id, session: z.string().max(60).nullable() }),
  }),
  z.strictObject({ what: z.literal("pack"), pack: sealedPackSchema }),
  z.strictObject({ what: z.literal("here") }),
]);
export type FromLead = z.infer<typeof fromLeadSchema>;
