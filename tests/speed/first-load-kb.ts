import { readFileSync } from "node:fs";
import { brotliCompressSync } from "node:zlib";
import { firstLoadFiles } from "./first-load-files.ts";

/** The most that the bench screen may load before a learner can sign in. */
export const mostFirstLoadKb = 90;

/** What the built bench screen loads at first, compressed as it goes over a network; the typeface, packed already, is not in it. */
export const firstLoadKb = (): number =>
  firstLoadFiles(readFileSync("dist/kiosk/index.html", "utf8"))
    .map((address) => brotliCompressSync(readFileSync(`dist/kiosk${address}`)).length)
    .reduce((total, byteCount) => total + byteCount, 0) / 1024;
