import { createPrivateKey, createPublicKey, generateKeyPairSync } from "node:crypto";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { compactDecrypt, CompactEncrypt, importJWK } from "jose";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { type Told, toldSchema } from "../people/person.ts";
import { readSecret } from "../people/secrets.ts";
import { centreKeySchema } from "./centre-key.schema.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { fileModes, writeWhole } from "../store/write-whole.ts";

/** The file with the key that a centre's names are read with: on the machine of its desk alone, never in the store. */
const keyFile = (folder: string): string => join(folder, "centre-key.json");

const curve = { kty: "OKP", crv: "X25519" } as const;
const keySchema = z.strictObject({
  kty: z.literal(curve.kty),
  crv: z.literal(curve.crv),
  x: centreKeySchema,
  d: centreKeySchema,
});

/** Agrees on a key with the centre's and seals with it at once (RFC 7518, 4.6 and 5.3). */
const algorithms = { alg: "ECDH-ES", enc: "A256GCM" } as const;

/** What is told of somebody, for whoever has the centre's key alone (RFC 7516); bound to whom it is of. */
export async function sealForCentre(personId: string, told: Told, publicKey: string): Promise<string> {
  const key = await importJWK({ ...curve, x: publicKey }, algorithms.alg);
  return new CompactEncrypt(Buffer.from(JSON.stringify(told), "utf8"))
    .setProtectedHeader({ ...algorithms, person: personId })
    .encrypt(key);
}

/** Reads what benches sealed. */
export class CentreKey {
  readonly #key: z.infer<typeof keySchema>;

  constructor(key: z.infer<typeof keySchema>) {
    this.#key = key;
  }

  get publicKey(): string {
    return this.#key.x;
  }

  /** What is told of a person; undefined where it was sealed for another key or of another person, or was changed. */
  async unseal(personId: string, sealed: string): Promise<Told | undefined> {
    try {
      const { plaintext, protectedHeader } = await compactDecrypt(
        sealed,
        await importJWK(this.#key, algorithms.alg),
        { keyManagementAlgorithms: [algorithms.alg], contentEncryptionAlgorithms: [algorithms.enc] },
      );
      if (protectedHeader["person"] !== personId) return undefined;
      const parsed = parseSafely(toldSchema, JSON.parse(Buffer.from(plaintext).toString("utf8")));
      return parsed.success ? parsed.data : undefined;
    } catch {
      return undefined;
    }
  }
}

/** The centre's key in a folder; undefined where there is none. @throws StoreError `secret-broken` */
export function readCentreKey(folder: string): CentreKey | undefined {
  const path = keyFile(folder);
  const kept = readSecret(path, keySchema);
  if (!kept) return undefined;
  try {
    // The halves belong together, or nobody's name could be read.
    const jwk = createPublicKey(createPrivateKey({ key: { ...kept }, format: "jwk" })).export({
      format: "jwk",
    });
    if (jwk.x === kept.x) return new CentreKey(kept);
  } catch (error) {
    throw new StoreError("secret-broken", { path }, error);
  }
  throw new StoreError("secret-broken", { path });
}

/** The centre's key in a folder, made where there is none. @throws StoreError */
export function openCentreKey(folder: string): CentreKey {
  const found = existsSync(keyFile(folder)) ? readCentreKey(folder) : undefined;
  if (found) return found;
  const { privateKey } = generateKeyPairSync("x25519");
  const parsed = parseSafely(keySchema, privateKey.export({ format: "jwk" }));
  if (!parsed.success) throw new Error("this Node makes no X25519 key");
  try {
    writeWhole(keyFile(folder), `${JSON.stringify(parsed.data)}\n`, fileModes.secret);
  } catch (error) {
    throw toStoreError(error, keyFile(folder));
  }
  return new CentreKey(parsed.data);
}
