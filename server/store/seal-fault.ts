import { z } from "zod";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import { parseSafely } from "../../shared/reading/parse-safely.schema.ts";
import { eventOfBytes } from "./event-bytes.ts";
import { isSignatureOf } from "./log-signer.ts";
import { hexOf } from "./row-hash.ts";

const bootSchema = z.object({ publicKey: z.string() });
const sealSchema = z.object({ attempt: z.string(), head: z.string(), signature: z.string() });

/** The keys that the boots of a log tell, and the seals made with them, proved row by row. */
export class Seals {
  #publicKey: string | undefined;

  /** The key that the last boot told; undefined where none did. */
  get publicKey(): string | undefined {
    return this.#publicKey;
  }

  /** What is wrong with a row as a seal, in words; undefined where nothing is or it is none. */
  fault(row: LogRow): string | undefined {
    if (row.type === "boot") {
      const boot = parseSafely(bootSchema, eventOfBytes(row.bytes).content);
      this.#publicKey = boot.success ? boot.data.publicKey : undefined;
    }
    if (row.type !== "sealed") return undefined;
    const seal = parseSafely(sealSchema, eventOfBytes(row.bytes).content);
    if (!seal.success) return "it is not in the form of a seal";
    const { head, signature } = seal.data;
    if (head !== hexOf(row.previousHash)) return "it seals another record than the one before it";
    if (this.#publicKey === undefined) return "the key it was sealed with is not told";
    return isSignatureOf(this.#publicKey, head, signature) ? undefined : "its signature is not the bench's";
  }
}
