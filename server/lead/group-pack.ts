import { z } from "zod";
import { languages } from "../../shared/text/languages.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { criteriaSchema } from "../desk/criteria.ts";
import { packedPersonSchema } from "../people/packed-person.schema.ts";
import { isSignatureOf, type LogSigner } from "../store/log-signer.ts";
import { hashOfBytes, hexOf } from "../store/row-hash.ts";
import type { SealedPack } from "./lead-messages.schema.ts";

/** What a group works with: its people, tasks, criteria and settings, as the lead has them. */
const groupPackSchema = z.strictObject({
  format: z.literal("spurwise group pack 1"),
  leadId: z.string().min(1).max(60),
  /** Counts up at the lead: an older one never takes the place of a newer. */
  version: z.number().int().min(1),
  madeWallMs: z.number(),
  /** Who sent it, by their id, and their session in the lead's log. */
  by: z.strictObject({ person: z.string().min(1).max(60), session: z.string().max(60).nullable() }),
  /** What badges of these people are looked up under. */
  badgeSalt: z.base64(),
  people: z.array(packedPersonSchema).max(2000),
  /** Who was erased at the lead, and is not to be known at a bench either. */
  erased: z.array(z.string().max(64)).max(20_000),
  criteria: criteriaSchema,
  /** The files of the tasks. */
  tasks: z.array(z.base64()).max(500),
  settings: z.strictObject({ findings: z.enum(["asked", "live"]), language: z.enum(languages) }),
});
export type GroupPack = z.infer<typeof groupPackSchema>;

const signedOfPack = (bytes: Uint8Array): string => `group pack ${hexOf(hashOfBytes(bytes))}`;

/** A pack as it goes out: its bytes, and the signature of the lead over their SHA-256. */
export function sealPack(pack: GroupPack, signer: Pick<LogSigner, "signatureOf">): SealedPack {
  const bytes = Buffer.from(JSON.stringify(pack), "utf8");
  return { bytes: bytes.toString("base64"), signature: signer.signatureOf(signedOfPack(bytes)) };
}

/** A pack that a lead has signed, and its SHA-256; undefined where it has not, or where it is none. */
export function openPack(
  { bytes: text, signature }: SealedPack,
  leadKey: string,
): { pack: GroupPack; hash: string } | undefined {
  const bytes = Buffer.from(text, "base64");
  if (!isSignatureOf(leadKey, signedOfPack(bytes), signature)) return undefined;
  try {
    const parsed = parseSafely(groupPackSchema, JSON.parse(bytes.toString("utf8")));
    return parsed.success ? { pack: parsed.data, hash: hexOf(hashOfBytes(bytes)) } : undefined;
  } catch {
    return undefined;
  }
}
