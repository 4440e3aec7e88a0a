import type { Pool } from "pg";
import type { LogRow } from "../../shared/protocol/log-row.ts";
import type { Timers } from "../clock/clock.ts";
import { Repeating } from "../clock/repeating.ts";
import type { OtherPeople, OtherPerson } from "../people/other-people.ts";
import { OtherLogError, type OtherLogs } from "../store/other-logs.ts";
import { hexOf, isSameBytes } from "../store/row-hash.ts";
import { rowOfRecord } from "../store/row-of-record.ts";
import type { CentreKey } from "./centre-key.ts";
import { CentrePeople } from "./centre-people.ts";
import { recordOfCentre } from "./centre-rows.ts";

export interface FollowerParts {
  pool: Pool;
  /** Whose benches are followed. */
  centre: string;
  logs: OtherLogs;
  /** What names are read with; undefined: people are told apart by the end of their ids. */
  key: CentreKey | undefined;
  timers: Timers;
  note: (sentence: string) => void;
  /** Something new is there. */
  changed: () => void;
}

interface Ended {
  bench_id: string;
  head_hash: Buffer | null;
}

/** So many rows are taken over at once. */
const sliceRowCount = 1000;
const lookEveryMs = 2000;
const retryMs = 15_000;

/**
 * Takes the logs of a centre's benches from its store into the records of the centre's desk, each row proved as the next of
 * its bench, and the names of their people, which stay in memory: whoever is erased there is gone here with the next look.
 */
export class CentreFollower implements OtherPeople {
  readonly #parts: FollowerParts;
  readonly #people: CentrePeople;
  #known: ReadonlyMap<string, OtherPerson> = new Map();
  #unsealed = new Map<string, OtherPerson | undefined>();
  readonly #noted = new Set<string>();
  readonly #loop: Repeating;

  constructor(parts: FollowerParts) {
    this.#parts = parts;
    this.#people = new CentrePeople(parts.pool);
    this.#loop = new Repeating({
      timers: parts.timers,
      go: () => this.#go(),
      failed: ({ message }) => this.#say("store", `the store is not followed now (${message})`),
      firstRetryMs: retryMs,
      longestRetryMs: retryMs,
    });
  }

  all(): OtherPerson[] {
    return [...this.#known.values()];
  }

  byId(id: string): OtherPerson | undefined {
    return this.#known.get(id);
  }

  start(): void {
    this.#loop.start();
  }

  /** Starts nothing more, and waits for what is being taken over. */
  stop(): Promise<void> {
    return this.#loop.stop();
  }

  /** Takes over all that is new once. Rejects with what the engine or the disk gives; what was taken stays. */
  async #follow(): Promise<void> {
    const { pool, centre, changed } = this.#parts;
    const { rows: benches } = await pool.query<Ended>(
      "SELECT bench_id, head_hash FROM bench WHERE centre = $1 ORDER BY bench_id",
      [centre],
    );
    let isNew = false;
    for (const { bench_id: benchId, head_hash: headHash } of benches)
      if (headHash) isNew = (await this.#followBench(benchId, headHash)) || isNew;
    isNew = (await this.#followPeople()) || isNew;
    if (isNew) changed();
  }

  async #go(): Promise<number> {
    await this.#follow();
    if (this.#noted.delete("store")) this.#parts.note("the store is reached again");
    return lookEveryMs;
  }

  async #followBench(benchId: string, headHash: Uint8Array): Promise<boolean> {
    const { logs } = this.#parts;
    let isNew = false;
    for (;;) {
      const end = logs.endOf(benchId);
      if (this.#loop.isStopped || (end && isSameBytes(end.hash, headHash))) return isNew;
      const rows = await this.#rowsAfter(benchId, end);
      if (!rows || rows.length === 0) return isNew;
      try {
        logs.take(rows, await this.#documents(logs.missing(rows)));
      } catch (error) {
        if (!(error instanceof OtherLogError)) throw error;
        this.#say(benchId, `no more is taken from the store of bench ${benchId}: ${error.message}`);
        return isNew;
      }
      isNew = true;
      if (rows.length < sliceRowCount) return isNew;
    }
  }

  async #rowsAfter(
    benchId: string,
    end: { boot: number; sequence: number } | undefined,
  ): Promise<LogRow[] | undefined> {
    const { centre, pool } = this.#parts;
    const { rows: records } = await pool.query<Record<string, unknown>>(
      `SELECT bench_id, boot, sequence, attempt_id, type, bytes, previous_hash, hash, monotonic_ms, wall_ms, clock_state
       FROM log_row WHERE centre = $1 AND bench_id = $2 AND (boot, sequence) > ($3, $4)
       ORDER BY boot, sequence LIMIT $5`,
      [centre, benchId, end?.boot ?? 0, end?.sequence ?? -1, sliceRowCount],
    );
    const rows = records.map((record) => rowOfRecord(recordOfCentre(record)));
    const known = rows.filter((row) => row !== undefined);
    if (known.length === rows.length) return known;
    // A bench of a later version writes what this program does not know yet.
    this.#say(benchId, `no more is taken from the store of bench ${benchId}: update this desk's program`);
    return undefined;
  }

  async #documents(hashes: readonly string[]): Promise<Map<string, Uint8Array>> {
    const { rows } = await this.#parts.pool.query<{ hash: Buffer; bytes: Buffer }>(
      "SELECT hash, bytes FROM document WHERE hash = ANY ($1::bytea[])",
      [hashes.map((hash) => Buffer.from(hash, "hex"))],
    );
    return new Map(rows.map(({ hash, bytes }) => [hexOf(hash), bytes]));
  }

  /** Reads who is there now; true where somebody is new, gone or another. */
  async #followPeople(): Promise<boolean> {
    const { key, centre } = this.#parts;
    if (!key) return false;
    const known = new Map<string, OtherPerson>();
    const unsealed = new Map<string, OtherPerson | undefined>();
    for (const { personId: id, role, sealed } of await this.#people.of(centre)) {
      const mark = `${id} ${role} ${sealed}`;
      if (!this.#unsealed.has(mark)) {
        const told = await key.unseal(id, sealed);
        this.#unsealed.set(mark, told && { id, role, name: told.name, told });
      }
      const person = this.#unsealed.get(mark);
      unsealed.set(mark, person);
      // Where several benches know somebody, as the one says that said it last.
      if (person && !known.has(id)) known.set(id, person);
    }
    const isNew =
      unsealed.size !== this.#unsealed.size ||
      known.size !== this.#known.size ||
      [...known].some(([id, person]) => this.#known.get(id) !== person);
    this.#unsealed = unsealed;
    this.#known = known;
    return isNew;
  }

  /** For the journal: each trouble once. */
  #say(about: string, sentence: string): void {
    if (!this.#noted.has(about)) this.#parts.note(sentence);
    this.#noted.add(about);
  }
}
