import type { PersonReader } from "../people/person-reader.ts";
import type { Connection } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";

/** A learner whose time to be kept is over. */
export interface Due {
  id: string;
  name: string;
  /** When they last worked here, or were put on the list. */
  lastWallMs: number;
}

const yearMs = 365.25 * 24 * 3_600_000;

/**
 * The learners who did nothing here for longer than a centre keeps them, the longest ago first. Nobody on hold is among
 * them.
 *
 * @throws StoreError
 */
export function dueLearners(
  reader: PersonReader,
  database: Connection,
  keepYears: number,
  nowMs: number,
): Due[] {
  const lastOf = database.prepare<[string], { lastWallMs: number | null }>(
    "SELECT max(last_wall_ms) AS lastWallMs FROM attempt WHERE learner = ?",
  );
  return reader
    .all()
    .filter(({ role, isHeld }) => role === "learner" && !isHeld)
    .map(({ id, name, addedWallMs }) => {
      const last = readThrough(database, () => lastOf.get(id))?.lastWallMs ?? 0;
      return { id, name, lastWallMs: Math.max(addedWallMs, last) };
    })
    .filter(({ lastWallMs }) => nowMs - lastWallMs > keepYears * yearMs)
    .sort((a, b) => a.lastWallMs - b.lastWallMs);
}
