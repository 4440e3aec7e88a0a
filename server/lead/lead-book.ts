import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { StoreError, toStoreError } from "../store/store-error.ts";
import { fileModes, writeWhole } from "../store/write-whole.ts";

const peerShape = {
  id: z.string().min(1).max(60),
  name: z.string().max(80),
  /** Ed25519, DER in base64; pinned at the pairing. */
  publicKey: z.string().min(1).max(200),
};
const benchSchema = z.strictObject(peerShape);
const leadSchema = z.strictObject({
  ...peerShape,
  host: z.string().min(1).max(255),
  port: z.number().int().min(1).max(65_535),
});
const bookSchema = z.strictObject({
  isLeading: z.boolean().default(false),
  benches: z.array(benchSchema).max(200).default([]),
  lead: leadSchema.nullable().default(null),
});

/** A bench that was paired with this one, which leads it. */
export type KnownBench = z.infer<typeof benchSchema>;
/** The lead that this bench was paired with, and where it was met. */
export type KnownLead = z.infer<typeof leadSchema>;
type Book = z.infer<typeof bookSchema>;

const bookFile = "lead.json";

/** Whom this bench leads and who leads it, in a file of the data folder. It holds public keys alone. */
export class LeadBook {
  readonly #path: string;
  #book: Book;

  /** @throws StoreError `secret-broken` where the file is not what it should be. */
  constructor(folder: string) {
    this.#path = join(folder, bookFile);
    this.#book = this.#read();
  }

  get isLeading(): boolean {
    return this.#book.isLeading;
  }

  get benches(): readonly KnownBench[] {
    return this.#book.benches;
  }

  get lead(): KnownLead | null {
    return this.#book.lead;
  }

  /** @throws StoreError; then it is as before. */
  keepLeading(isLeading: boolean): void {
    this.#keep({ ...this.#book, isLeading });
  }

  /** A bench that is paired again has its new key. @throws StoreError */
  keepBench(bench: KnownBench): void {
    const others = this.#book.benches.filter(({ id }) => id !== bench.id);
    this.#keep({ ...this.#book, benches: [...others, bench] });
  }

  /** @throws StoreError */
  forgetBench(benchId: string): void {
    this.#keep({ ...this.#book, benches: this.#book.benches.filter(({ id }) => id !== benchId) });
  }

  /** @throws StoreError */
  keepLead(lead: KnownLead | null): void {
    this.#keep({ ...this.#book, lead });
  }

  #read(): Book {
    if (!existsSync(this.#path)) return bookSchema.parse({});
    try {
      const parsed = parseSafely(bookSchema, JSON.parse(readFileSync(this.#path, "utf8")));
      if (parsed.success) return parsed.data;
    } catch (error) {
      throw new StoreError("secret-broken", { path: this.#path }, error);
    }
    throw new StoreError("secret-broken", { path: this.#path });
  }

  #keep(book: Book): void {
    try {
      writeWhole(this.#path, `${JSON.stringify(book)}\n`, fileModes.secret);
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
    this.#book = book;
  }
}
