import { randomInt, timingSafeEqual } from "node:crypto";

/** Without letters and digits that look like others. */
const letters = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
const half = 4;

/** Eight random letters and digits, in two halves. */
export const newFirstStartCode = (): string => {
  const word = (): string => Array.from({ length: half }, () => letters[randomInt(letters.length)]).join("");
  return `${word()}-${word()}`;
};

const plain = (code: string): Buffer => Buffer.from(code.toUpperCase().replace(/[^A-Z0-9]/g, ""), "utf8");

/** True where a code was typed as it stands, the line in the middle and small letters aside. */
export function isSameCode(wanted: string, typed: string): boolean {
  const [a, b] = [plain(wanted), plain(typed)];
  return a.length === b.length && timingSafeEqual(a, b);
}
