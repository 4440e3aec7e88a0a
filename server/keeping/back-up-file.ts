import Database from "better-sqlite3";
import { createHash } from "node:crypto";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { badgeSecretFile, erasedFile, personKeysFile } from "../people/secrets.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";

/** What a back-up is of, beside the records themselves. */
export const manifestSchema = z.strictObject({
  format: z.literal(1),
  benchId: z.string(),
  schemaVersion: z.number().int(),
  softwareVersion: z.string(),
  rowCount: z.number().int(),
  /** Hash of the last record, in hexadecimal. */
  head: z.string(),
  madeWallMs: z.number().int(),
});
export type Manifest = z.infer<typeof manifestSchema>;

/** The files that go along with the records. The key that the bench signs with is not among them. */
export const filesAlong = [badgeSecretFile, personKeysFile, erasedFile] as const;
export type FileAlong = (typeof filesAlong)[number];

const manifestName = "manifest.json";
const partSchema = z.object({
  name: z.enum([manifestName, ...filesAlong]),
  sha256: z.string(),
  bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array),
});

const sumOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Puts the manifest and the files that go along into a copy of the records, so that a back-up is one file. */
export function packInto(path: string, manifest: Manifest, files: ReadonlyMap<FileAlong, Uint8Array>): void {
  const database = new Database(path);
  try {
    database.pragma("journal_mode = DELETE");
    database.pragma("synchronous = FULL");
    database.exec(
      "CREATE TABLE back_up (name TEXT NOT NULL PRIMARY KEY, sha256 TEXT NOT NULL, bytes BLOB NOT NULL) STRICT",
    );
    const put = database.prepare("INSERT INTO back_up (name, sha256, bytes) VALUES (?, ?, ?)");
    const parts = [[manifestName, Buffer.from(JSON.stringify(manifest))] as const, ...files];
    for (const [name, bytes] of parts) put.run(name, sumOf(bytes), bytes);
  } finally {
    database.close();
  }
}

/**
 * Takes the manifest and the files out of a copy of a back-up again, which then holds the records alone. A name in it is
 * held against the list of names there are; it is never taken for a path.
 *
 * @throws StoreError `damaged` with what is wrong, where it is no back-up or not as it was made.
 */
export function unpack(path: string): { manifest: Manifest; files: Map<FileAlong, Uint8Array> } {
  const no = (reason: string): StoreError => new StoreError("damaged", { path, reason });
  let database: Database.Database | undefined;
  try {
    database = new Database(path, { fileMustExist: true });
    const isBackUp = database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'back_up'").get();
    if (!isBackUp) throw no("it is no back-up");
    const files = new Map<FileAlong, Uint8Array>();
    let manifest: Manifest | undefined;
    for (const row of database.prepare("SELECT name, sha256, bytes FROM back_up ORDER BY name").all()) {
      const part = parseSafely(partSchema, row);
      if (!part.success)
        throw no(`it holds "${String((row as { name?: unknown }).name)}", which is no part of a back-up`);
      const { name, sha256, bytes } = part.data;
      if (sumOf(bytes) !== sha256) throw no(`${name} in it is not as it was made`);
      if (name !== manifestName) files.set(name, bytes);
      else {
        const told = parseSafely(manifestSchema, JSON.parse(Buffer.from(bytes).toString("utf8")));
        if (!told.success) throw no("its manifest is none");
        manifest = told.data;
      }
    }
    if (!manifest) throw no("it has no manifest");
    database.exec("DROP TABLE back_up");
    return { manifest, files };
  } catch (error) {
    if (error instanceof SyntaxError) throw no("its manifest is none");
    throw toStoreError(error, path);
  } finally {
    database?.close();
  }
}
