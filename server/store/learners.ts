import type { Statement } from "better-sqlite3";
import type { Connection } from "./open-database.ts";
import { readThrough } from "./read-through.ts";
import { hashOfBytes } from "./row-hash.ts";

/** A person of the class list. The log knows only the id. */
export interface Learner {
  id: string;
  name: string;
}

export interface NewLearner extends Learner {
  centreNumber: string;
  /** What the badge reads as; only its hash is kept. */
  badge?: string;
}

const badgeHash = (badge: string): Uint8Array => hashOfBytes(Buffer.from(badge, "utf8"));

/** Reads the class list, which lies in a table apart from the log. */
export class LearnerReader {
  readonly #database: Connection;
  readonly #all: Statement<[], Learner>;
  readonly #byBadge: Statement<[Uint8Array], Learner>;
  readonly #byId: Statement<[string], Learner>;

  constructor(database: Connection) {
    this.#database = database;
    this.#all = database.prepare("SELECT learner_id AS id, name FROM learner ORDER BY name, learner_id");
    this.#byBadge = database.prepare("SELECT learner_id AS id, name FROM learner WHERE badge_hash = ?");
    this.#byId = database.prepare("SELECT learner_id AS id, name FROM learner WHERE learner_id = ?");
  }

  all(): Learner[] {
    return readThrough(this.#database, () => this.#all.all());
  }

  byId(id: string): Learner | undefined {
    return readThrough(this.#database, () => this.#byId.get(id));
  }

  byBadge(badge: string): Learner | undefined {
    return readThrough(this.#database, () => this.#byBadge.get(badgeHash(badge)));
  }
}

/** Writes the class list. */
export class LearnerWriter {
  readonly #database: Connection;

  constructor(database: Connection) {
    this.#database = database;
  }

  /** Fills an empty class list, all or none; one that has names already stays as it is. */
  seed(learners: readonly NewLearner[]): void {
    this.#database.transaction(() => {
      if (this.#database.prepare("SELECT 1 FROM learner LIMIT 1").get()) return;
      const insert = this.#database.prepare(
        "INSERT INTO learner (learner_id, name, centre_number, badge_hash) VALUES (?, ?, ?, ?)",
      );
      for (const { id, name, centreNumber, badge } of learners)
        insert.run(id, name, centreNumber, badge === undefined ? null : badgeHash(badge));
    })();
  }
}
