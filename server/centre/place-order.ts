import type { Place } from "./centre-messages.schema.ts";

/** True where a place of a bench's log comes after another one; all do after none. */
export const isAfter = (a: Place, b: Place | null): boolean =>
  b === null || a.boot > b.boot || (a.boot === b.boot && a.sequence > b.sequence);
