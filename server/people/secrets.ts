import { createHmac, randomBytes } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { hashOfBytes } from "../store/row-hash.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { fileModes, writeWhole } from "../store/write-whole.ts";

/** The files of a data folder that make people readable, and the list of those who are not any more. */
export const badgeSecretFile = "secrets.json";
export const personKeysFile = "person-keys.json";
export const erasedFile = "erased.json";

const secretBytes = 32;
const base64Key = z.base64().refine((text) => Buffer.from(text, "base64").length === secretBytes);

const secretsSchema = z.strictObject({
  /** Under which badges are looked up. */
  badge: base64Key,
});
export const personKeysSchema = z.record(z.string(), base64Key);

export const newKey = (): Buffer => randomBytes(secretBytes);

/** What a JSON file holds; undefined where there is none. @throws StoreError where it is not what it should be. */
export function readSecret<T>(path: string, schema: z.ZodType<T>): T | undefined {
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return undefined;
    throw toStoreError(error, path);
  }
  try {
    const parsed = parseSafely(schema, JSON.parse(text));
    if (parsed.success) return parsed.data;
  } catch (error) {
    throw new StoreError("secret-broken", { path }, error);
  }
  throw new StoreError("secret-broken", { path });
}

function keepSecret(path: string, content: object): void {
  try {
    writeWhole(path, `${JSON.stringify(content)}\n`, fileModes.secret);
  } catch (error) {
    throw toStoreError(error, path);
  }
}

/** What the badges of a bench are marked under, from its secret, so that a list of marks tells nobody a code. */
export interface BadgeMarks {
  /** The salt for `PinHasher.badgeMark`. */
  salt: Buffer;
  /** The mark badges had before they were worked out with argon2id. */
  before: (badge: string) => Buffer;
  /** That mark of a badge of which only the SHA-256 is known, as the first lists kept it. */
  ofHash: (hash: Uint8Array) => Buffer;
}

const firstDomain = "spurwise badge 1\n";
const saltDomain = "spurwise badge 2\n";

/**
 * The marks of this bench, by the secret in its data folder, which is made at the first start. `hasMarks`: badges were
 * marked already, so that another secret would make all of them strangers.
 *
 * @throws StoreError `secret-broken`, or what a disk that takes nothing gives.
 */
export function openBadgeMarks(folder: string, hasMarks: boolean): BadgeMarks {
  const path = join(folder, badgeSecretFile);
  let secrets = readSecret(path, secretsSchema);
  if (!secrets) {
    if (hasMarks) throw new StoreError("secret-broken", { path });
    secrets = { badge: newKey().toString("base64") };
    keepSecret(path, secrets);
  }
  const key = Buffer.from(secrets.badge, "base64");
  const ofHash = (hash: Uint8Array): Buffer =>
    createHmac("sha256", key).update(firstDomain).update(hash).digest();
  return {
    salt: createHmac("sha256", key).update(saltDomain).digest(),
    ofHash,
    before: (badge) => ofHash(hashOfBytes(Buffer.from(badge, "utf8"))),
  };
}

/** Ids of people who were erased, as a folder's list has them: a back-up that is brought back must not bring them back. */
export const readErased = (folder: string): string[] =>
  readSecret(join(folder, erasedFile), z.array(z.string())) ?? [];

/** Puts ids on the list of a folder. @throws StoreError */
export function keepErased(folder: string, personIds: readonly string[]): void {
  const before = new Set(readErased(folder));
  const all = new Set([...before, ...personIds]);
  if (all.size > before.size) keepSecret(join(folder, erasedFile), [...all].sort());
}

/** The key each person is sealed with, in a file apart from the records. An erased person has none any more. */
export class PersonKeys {
  readonly #path: string;
  #keys: Map<string, Buffer>;
  readonly #folder: string;

  /** @throws StoreError `secret-broken`, or a file that may not be read. */
  constructor(folder: string) {
    this.#folder = folder;
    this.#path = join(folder, personKeysFile);
    const kept = readSecret(this.#path, personKeysSchema) ?? {};
    this.#keys = new Map(Object.entries(kept).map(([id, key]) => [id, Buffer.from(key, "base64")]));
  }

  get path(): string {
    return this.#path;
  }

  of(personId: string): Buffer | undefined {
    return this.#keys.get(personId);
  }

  /** Makes keys for people who have none, on the disk when it returns. @throws StoreError; then none is made. */
  make(personIds: readonly string[]): void {
    const missing = personIds.filter((id) => !this.#keys.has(id));
    if (missing.length > 0)
      this.#keep(new Map([...this.#keys, ...missing.map((id) => [id, newKey()] as const)]));
  }

  /** Destroys keys: nothing that was sealed with them can be read again. @throws StoreError; then all are there. */
  destroy(personIds: readonly string[]): void {
    keepErased(this.#folder, personIds);
    const gone = new Set(personIds.filter((id) => this.#keys.has(id)));
    if (gone.size > 0) this.#keep(new Map([...this.#keys].filter(([id]) => !gone.has(id))));
  }

  #keep(keys: Map<string, Buffer>): void {
    keepSecret(this.#path, Object.fromEntries([...keys].map(([id, key]) => [id, key.toString("base64")])));
    this.#keys = keys;
  }
}
