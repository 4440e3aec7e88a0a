import { createHash, verify } from "node:crypto";
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { UpdateError } from "./update-error.ts";

export const manifestName = "update.json";
export const signatureName = "update.sig";
const largestManifestBytes = 4_000_000;

/** A path below the folder of an update: no step upwards, nothing absolute. */
const pathSchema = z
  .string()
  .max(300)
  .regex(/^(?:(?!\.{1,2}\/)[\w@.+-]+\/)*(?!\.{1,2}$)[\w@.+-]+$/);

/** What an update is: its version, and every file of it by the hash of its bytes. */
const manifestSchema = z.strictObject({
  format: z.literal(1),
  version: z.string().regex(/^\d{1,6}\.\d{1,6}\.\d{1,6}$/),
  madeWallMs: z.number().int(),
  files: z
    .array(
      z.strictObject({
        path: pathSchema,
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
        bytes: z.number().int().min(0).max(200_000_000),
      }),
    )
    .min(1)
    .max(20_000),
});
export type UpdateManifest = z.infer<typeof manifestSchema>;

export const sha256Of = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

function bytesOf(folder: string, name: string): Buffer {
  const path = join(folder, name);
  try {
    if (statSync(path).size > largestManifestBytes) throw new UpdateError("no-update", name);
    return readFileSync(path);
  } catch (error) {
    if (error instanceof UpdateError) throw error;
    throw new UpdateError("no-update", name);
  }
}

/**
 * Reads what an update is, once its signature (Ed25519, RFC 8032, over the bytes of the manifest) is that of whoever
 * publishes them; nothing of it is looked at before.
 *
 * @throws UpdateError `no-update`, `wrong-signature`
 */
export function readManifest(folder: string, publicKeyPem: string): UpdateManifest {
  const bytes = bytesOf(folder, manifestName);
  const signature = Buffer.from(bytesOf(folder, signatureName).toString("utf8").trim(), "base64");
  if (!isSignedBy(publicKeyPem, bytes, signature)) throw new UpdateError("wrong-signature", signatureName);
  let told: unknown;
  try {
    told = JSON.parse(bytes.toString("utf8"));
  } catch {
    throw new UpdateError("no-update", manifestName);
  }
  const parsed = parseSafely(manifestSchema, told);
  if (!parsed.success) throw new UpdateError("no-update", manifestName);
  return parsed.data;
}

function isSignedBy(publicKeyPem: string, bytes: Uint8Array, signature: Uint8Array): boolean {
  try {
    return verify(null, bytes, publicKeyPem, signature);
  } catch {
    return false;
  }
}

const partsOf = (version: string): number[] => version.split(/[.+-]/).slice(0, 3).map(Number);

/** True where a version comes after another; what stands behind the three numbers is not looked at. */
export function isNewer(version: string, than: string): boolean {
  const [mine, other] = [partsOf(version), partsOf(than)];
  for (const at of [0, 1, 2]) {
    const difference = (mine[at] ?? 0) - (other[at] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return false;
}
