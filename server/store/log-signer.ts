import {
  createHash,
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { StoreError, toStoreError } from "./store-error.ts";
import { fileModes, writeWhole } from "./write-whole.ts";

const domain = "spurwise seal 1\n";
const bytesOf = (head: string): Buffer => Buffer.from(domain + head, "utf8");

/** Where a bench keeps the key it signs with: in no back-up and in no card image. */
const keyFile = (folder: string): string => join(folder, "signing-key.pem");

/** Signs how far the log has come, by the bench's own Ed25519 key (RFC 8032). */
export interface LogSigner {
  /** The public key, DER in base64, as each boot tells it. */
  publicKey: string;
  /** The signature over a row's hash in hexadecimal, in base64. */
  signatureOf: (head: string) => string;
}

const publicKeyOf = (key: KeyObject): string =>
  createPublicKey(key).export({ type: "spki", format: "der" }).toString("base64");

/** The public key of a bench by its folder; undefined where it has none that can be read. */
export function readPublicKey(folder: string): string | undefined {
  try {
    return publicKeyOf(createPrivateKey(readFileSync(keyFile(folder))));
  } catch {
    return undefined;
  }
}

/**
 * The signer of a data folder; its key is made at the first start.
 *
 * @throws StoreError `secret-broken`, or what a disk that takes nothing gives.
 */
export function openSigner(folder: string): LogSigner {
  const path = keyFile(folder);
  try {
    if (!existsSync(path)) {
      const { privateKey } = generateKeyPairSync("ed25519");
      writeWhole(path, privateKey.export({ type: "pkcs8", format: "pem" }).toString(), fileModes.secret);
    }
  } catch (error) {
    throw toStoreError(error, path);
  }
  let key: KeyObject;
  try {
    key = createPrivateKey(readFileSync(path));
  } catch (error) {
    throw new StoreError("secret-broken", { path }, error);
  }
  return {
    publicKey: publicKeyOf(key),
    signatureOf: (head) => sign(null, bytesOf(head), key).toString("base64"),
  };
}

/** True where a signature is that of a key over a row's hash. */
export function isSignatureOf(publicKey: string, head: string, signature: string): boolean {
  try {
    const key = createPublicKey({ key: Buffer.from(publicKey, "base64"), type: "spki", format: "der" });
    return verify(null, bytesOf(head), key, Buffer.from(signature, "base64"));
  } catch {
    return false;
  }
}

/** A public key as it is printed and read aloud: the first 16 digits of its SHA-256. */
export const shortKey = (publicKey: string): string =>
  createHash("sha256").update(Buffer.from(publicKey, "base64")).digest("hex").slice(0, 16);
