import { createCipheriv, createDecipheriv, createHash, randomBytes, scryptSync } from "node:crypto";
import { closeSync, fsyncSync, openSync, readSync, writeSync } from "node:fs";
import { StoreError } from "../store/store-error.ts";
import { fileModes } from "../store/write-whole.ts";

const magic = Buffer.from("spurwise sealed back-up 1\n", "utf8");
const saltBytes = 16;
const checkBytes = 8;
const ivBytes = 12;
const tagBytes = 16;
const headBytes = magic.length + saltBytes + checkBytes + ivBytes;
const sliceBytes = 256 * 1024;

/** scrypt with 32 MiB, three times over: as the OWASP Password Storage Cheat Sheet has it for that much memory. */
const cost = { N: 2 ** 15, r: 8, p: 3, maxmem: 64 * 1024 * 1024 } as const;
const keyBytes = 32;

/** The key of a passphrase, and some bytes by which a wrong one is told from a file that was changed. */
function keyOf(passphrase: string, salt: Uint8Array): { key: Buffer; check: Buffer } {
  const bytes = scryptSync(passphrase.normalize("NFC"), salt, keyBytes * 2, cost);
  const check = createHash("sha256").update(bytes.subarray(keyBytes)).digest().subarray(0, checkBytes);
  return { key: bytes.subarray(0, keyBytes), check };
}

/** Every slice of an open file from a place to another, in turn. */
function* slicesOf(file: number, from: number, to: number): Generator<Buffer> {
  const slice = Buffer.alloc(sliceBytes);
  for (let at = from; at < to;) {
    const count = readSync(file, slice, 0, Math.min(sliceBytes, to - at), at);
    if (count === 0) return;
    at += count;
    yield slice.subarray(0, count);
  }
}

const withFile = <T>(path: string, flags: string, use: (file: number) => T): T => {
  const file = openSync(path, flags, fileModes.secret);
  try {
    return use(file);
  } finally {
    closeSync(file);
  }
};

function readHead(file: number): Buffer | undefined {
  const head = Buffer.alloc(headBytes);
  const isWhole = readSync(file, head, 0, headBytes, 0) === headBytes;
  return isWhole && head.subarray(0, magic.length).equals(magic) ? head : undefined;
}

/** True where a file was sealed with a passphrase. @throws a file system error. */
export const isSealed = (path: string): boolean => withFile(path, "r", readHead) !== undefined;

/**
 * Seals a file with a passphrase into another, which is new: AES-256-GCM under a key that scrypt makes of it. What is read
 * is never in the memory whole. `bytes` is how long the file is.
 *
 * @throws a file system error.
 */
export function sealFile(from: string, to: string, bytes: number, passphrase: string): void {
  const salt = randomBytes(saltBytes);
  const { key, check } = keyOf(passphrase, salt);
  const iv = randomBytes(ivBytes);
  const head = Buffer.concat([magic, salt, check, iv]);
  withFile(from, "r", (source) =>
    withFile(to, "wx", (target) => {
      const sealing = createCipheriv("aes-256-gcm", key, iv, { authTagLength: tagBytes }).setAAD(head);
      writeSync(target, head);
      for (const slice of slicesOf(source, 0, bytes)) writeSync(target, sealing.update(slice));
      writeSync(target, sealing.final());
      writeSync(target, sealing.getAuthTag());
      fsyncSync(target);
    }),
  );
}

/**
 * Opens what was sealed into another file, which is new. `bytes` is how long the sealed one is.
 *
 * @throws StoreError `wrong-passphrase`, `damaged` where a byte was changed; what was written is then to be thrown away.
 */
export function openSealed(from: string, to: string, bytes: number, passphrase: string): void {
  withFile(from, "r", (source) => {
    const head = readHead(source);
    if (!head || bytes < headBytes + tagBytes)
      throw new StoreError("damaged", { path: from, reason: "it is no sealed back-up" });
    const at = { salt: magic.length, check: magic.length + saltBytes, iv: headBytes - ivBytes };
    const { key, check } = keyOf(passphrase, head.subarray(at.salt, at.check));
    if (!check.equals(head.subarray(at.check, at.iv)))
      throw new StoreError("wrong-passphrase", { path: from });
    const opening = createDecipheriv("aes-256-gcm", key, head.subarray(at.iv), {
      authTagLength: tagBytes,
    }).setAAD(head);
    const end = bytes - tagBytes;
    const [tag] = slicesOf(source, end, bytes);
    opening.setAuthTag(Buffer.from(tag ?? ""));
    withFile(to, "wx", (target) => {
      for (const slice of slicesOf(source, headBytes, end)) writeSync(target, opening.update(slice));
      try {
        writeSync(target, opening.final());
      } catch (error) {
        throw new StoreError("damaged", { path: from, reason: "it is not as it was sealed" }, error);
      }
    });
  });
}
