import { randomInt } from "node:crypto";

/** Letters and digits that nobody takes for one another. */
const signs = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
const length = 12;

/** What a new badge reads as: 59 bits by chance, in groups of four that can be typed as well. */
export function newBadgeCode(): string {
  const drawn = Array.from({ length }, () => signs.charAt(randomInt(signs.length))).join("");
  return (drawn.match(/.{4}/g) ?? []).join("-");
}
