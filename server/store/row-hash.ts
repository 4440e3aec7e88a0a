import { createHash } from "node:crypto";
import type { LogRow } from "../../shared/protocol/log-row.ts";

/** The hash before a bench's first row. */
export const noHash: Uint8Array = new Uint8Array(32);

const domain = Buffer.from("spurwise log row 1\n", "utf8");
const absent = 0xffffffff;

/**
 * SHA-256 of a row, by a framing that has one reading only:
 *
 * - the 19 bytes `spurwise log row 1\n`;
 * - the 32 bytes of the hash before;
 * - boot, sequence, monotonicMs, wallMs, each 8 bytes, signed, most significant first;
 * - benchId, attemptId, type, clockState (UTF-8), bytes, each after its length in 4 bytes, most significant
 *   first; an absent attemptId is the length ffffffff alone.
 */
export function hashOfRow(row: Omit<LogRow, "hash">): Uint8Array {
  const numbers = Buffer.alloc(32);
  [row.boot, row.sequence, row.monotonicMs, row.wallMs].forEach((number, index) => {
    numbers.writeBigInt64BE(BigInt(number), index * 8);
  });
  const framed = [
    textOf(row.benchId),
    row.attemptId === null ? null : textOf(row.attemptId),
    textOf(row.type),
    textOf(row.clockState),
    row.bytes,
  ].flatMap(frame);
  // Hashed in one go: each piece handed over by itself takes as long as all of them.
  const whole = Buffer.concat([domain, row.previousHash, numbers, ...framed]);
  return createHash("sha256").update(whole).digest();
}

const textOf = (content: string): Uint8Array => Buffer.from(content, "utf8");

function frame(content: Uint8Array | null): Uint8Array[] {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(content ? content.length : absent);
  return content ? [length, content] : [length];
}

/** SHA-256 of a document's bytes, under which it is stored. */
export const hashOfBytes = (bytes: Uint8Array): Uint8Array => createHash("sha256").update(bytes).digest();

/** True where two hashes, or what was hashed, are the same byte for byte. */
export const isSameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.compare(a, b) === 0;

/** A hash as it is written in events and on paper: 64 lower-case hexadecimal digits. */
export const hexOf = (hash: Uint8Array): string => Buffer.from(hash).toString("hex");
