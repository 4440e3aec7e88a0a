import { createHash, createHmac, randomInt, timingSafeEqual } from "node:crypto";

/** Letters and digits that nobody takes for one another. */
const letters = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const codeLength = 8;

/** A new pairing code in two groups of four, some 39 bits. */
export function newPairCode(): string {
  const text = Array.from({ length: codeLength }, () => letters[randomInt(letters.length)]).join("");
  return `${text.slice(0, 4)}-${text.slice(4)}`;
}

/** A code as it is compared, however it was typed. */
export const plainCode = (typed: string): string => typed.toUpperCase().replace(/[^0-9A-Z]/g, "");

/** Both ends of a pairing: what each says of itself. */
export interface PairEnds {
  benchId: string;
  benchKey: string;
  leadId: string;
  leadKey: string;
}

/** Everything the two ends have to agree on: the connection, and who says to be at each end. */
export const agreedOf = (binding: string, { benchId, benchKey, leadId, leadKey }: PairEnds): string =>
  JSON.stringify(["spurwise pair 1", binding, benchId, benchKey, leadId, leadKey]);

/** The salt a code is stretched under (argon2id): another with each connection, so that nothing is worked out before. */
export const saltOf = (agreed: string): Buffer => createHash("sha256").update(agreed).digest();

/** What one end shows the other: that it knows the code, on this very connection. */
export const proofOf = (stretched: Uint8Array, end: "bench" | "lead", agreed: string): string =>
  createHmac("sha256", stretched).update(`${end}\n${agreed}`).digest("hex");

export const isSameProof = (a: string, b: string): boolean =>
  a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));

/** What an end signs with its own key when it pairs, and each time it links: it is at the end of this connection. */
export const signedOfLink = (what: "pair" | "link", end: "bench" | "lead", text: string): string =>
  `${what} ${end} ${createHash("sha256").update(text).digest("hex")}`;

/** The text both ends sign when they link. */
export const linkText = (binding: string, benchId: string, leadId: string): string =>
  JSON.stringify(["spurwise link 1", binding, benchId, leadId]);
