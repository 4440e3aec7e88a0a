import { expect } from "vitest";
import { AttemptTable } from "../../../server/store/attempt-table.ts";
import type { Connection } from "../../../server/store/open-database.ts";

/** Every column of everything that is made from the log, as the file holds it. */
export const projected = (database: Connection): object => ({
  attempts: database.prepare("SELECT * FROM attempt ORDER BY bench_id, start_boot, start_sequence").all(),
  work: database.prepare("SELECT * FROM bench_work ORDER BY bench_id").all(),
});

/** Makes the table of attempts anew and expects it to be, to the byte, what was kept while the log was written. */
export function expectAsRebuilt(database: Connection): void {
  const kept = JSON.stringify(projected(database));
  new AttemptTable(database).rebuild();
  expect(JSON.stringify(projected(database))).toBe(kept);
}
