import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { type Told, toldSchema } from "./person.ts";

const cipher = "aes-256-gcm";
const ivBytes = 12;
const tagBytes = 16;

/** Ties a seal to its person: the row of another cannot be put in its place. */
const boundTo = (personId: string): Buffer => Buffer.from(`spurwise person 1\n${personId}`, "utf8");

/** What is told of a person under their key: 12 bytes that are never used again, 16 that prove it, what is told. */
export function seal(personId: string, told: Told, key: Uint8Array): Buffer {
  const iv = randomBytes(ivBytes);
  const sealing = createCipheriv(cipher, key, iv, { authTagLength: tagBytes }).setAAD(boundTo(personId));
  const text = Buffer.concat([sealing.update(JSON.stringify(told), "utf8"), sealing.final()]);
  return Buffer.concat([iv, sealing.getAuthTag(), text]);
}

/** What was sealed; undefined where the key is another or a byte was changed. */
export function unseal(personId: string, sealed: Uint8Array, key: Uint8Array): Told | undefined {
  try {
    const bytes = Buffer.from(sealed);
    const opening = createDecipheriv(cipher, key, bytes.subarray(0, ivBytes), {
      authTagLength: tagBytes,
    }).setAAD(boundTo(personId));
    opening.setAuthTag(bytes.subarray(ivBytes, ivBytes + tagBytes));
    const text = Buffer.concat([opening.update(bytes.subarray(ivBytes + tagBytes)), opening.final()]);
    const parsed = parseSafely(toldSchema, JSON.parse(text.toString("utf8")));
    return parsed.success ? parsed.data : undefined;
  } catch {
    return undefined;
  }
}
