import type { Clock } from "../clock/clock.ts";
import { byBench } from "../../shared/protocol/author.ts";
import type { LogWriter } from "../store/log-writer.ts";
import type { Connection } from "../store/open-database.ts";
import { readThrough } from "../store/read-through.ts";
import { StoreError } from "../store/store-error.ts";
import { PersonReader } from "./person-reader.ts";
import { PersonWriter } from "./person-writer.ts";
import { type BadgeMarks, openBadgeMarks, PersonKeys } from "./secrets.ts";

/** The list of people of a bench, opened. */
export interface PeopleStore {
  reader: PersonReader;
  writer: PersonWriter;
  marks: BadgeMarks;
  keys: PersonKeys;
}

interface OldLearner {
  id: string;
  name: string;
  centreNumber: string;
  badgeHash: Uint8Array | null;
}

/** Invented learners of before lay in the table; they are now nowhere but in the program. */
const isInvented = (id: string): boolean => /^demo-\d\d$/.test(id);

/** Takes over the class list of a bench that was made before people were sealed, once. */
function takeOverLearners(database: Connection, { writer, marks }: PeopleStore): void {
  const old = readThrough(database, () =>
    database
      .prepare<[], OldLearner>(
        "SELECT learner_id AS id, name, centre_number AS centreNumber, badge_hash AS badgeHash FROM learner",
      )
      .all(),
  );
  if (old.length === 0) return;
  const real = old.filter(({ id }) => !isInvented(id));
  writer.add(
    real.map(({ badgeHash, ...learner }) => ({
      ...learner,
      role: "learner" as const,
      ...(badgeHash ? { badgeMark: marks.ofHash(badgeHash) } : {}),
    })),
    byBench,
    "taken-over",
    () => database.prepare("DELETE FROM learner").run(),
  );
  // No row of the log tells of invented ones.
  database.prepare("DELETE FROM learner").run();
}

/**
 * Opens the list of people of a data folder: the rows in the records, the secrets beside them.
 *
 * @throws StoreError `damaged` or `secret-broken`, and what a disk that takes nothing gives.
 */
export function openPeople(
  folder: string,
  writing: Connection,
  reading: Connection,
  log: LogWriter,
  clock: Clock,
): PeopleStore {
  const keys = new PersonKeys(folder);
  const reader = new PersonReader(reading, keys);
  if (reader.keyless().length > 0) throw new StoreError("secret-broken", { path: keys.path });
  const store = {
    keys,
    marks: openBadgeMarks(folder, reader.hasMarks()),
    reader,
    writer: new PersonWriter({ database: writing, log, keys, wallMs: () => clock.wallMs() }),
  };
  takeOverLearners(writing, store);
  // The power may have gone between the two halves of an erasure.
  keys.destroy(store.reader.erased().map(({ id }) => id));
  return store;
}
