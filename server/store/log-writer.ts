import { statSync } from "node:fs";
import { v7 as uuidV7 } from "uuid";
import { type Author, byBench } from "../../shared/protocol/author.ts";
import type { EventType, LogRow } from "../../shared/protocol/log-row.ts";
import type { Clock } from "../clock/clock.ts";
import { CommitTimes } from "./commit-times.ts";
import { bytesOfEvent } from "./event-bytes.ts";
import { isSigned } from "./is-signed.ts";
import { keepAnchor, keepAnchorIn, type LogAnchor } from "./log-anchor.ts";
import type { LogSigner } from "./log-signer.ts";
import { type DocumentKind, LogTables } from "./log-tables.ts";
import { assertDurable, type Connection } from "./open-database.ts";
import { hashOfBytes, hashOfRow, hexOf, noHash } from "./row-hash.ts";
import { StoreError, toStoreError } from "./store-error.ts";

/** Something that happened, before it has a place in the log. */
export interface NewEvent {
  attemptId: string | null;
  type: EventType;
  author: Author;
  content: object;
}

type Moment = Pick<LogRow, "monotonicMs" | "wallMs">;

/** A clock that runs on by this much more or less than the time that went by was set meanwhile. */
const jumpMs = 2000;

/** Which file lies at a path; undefined where there is none. */
function fileIdOf(path: string): string | undefined {
  const found = statSync(path, { throwIfNoEntry: false, bigint: true });
  return found && `${found.dev}:${found.ino}`;
}

/**
 * The only writer of the own log. Makes the bench id at the first start and counts the boots. What `append`
 * returns is on the disk; what it throws for is not, and the next append takes its place in the chain.
 */
export class LogWriter {
  readonly benchId: string;
  readonly boot: number;
  /** How long each append took to be on the disk. */
  readonly commits = new CommitTimes();
  readonly #database: Connection;
  readonly #path: string;
  readonly #clock: Clock;
  readonly #signer: LogSigner | undefined;
  readonly #elsewhere: string | undefined;
  readonly #tables: LogTables;
  readonly #writeWhole: (rows: readonly LogRow[], alongside?: () => void) => void;
  readonly #fileId: string | undefined;
  #sequence = 0;
  #anchoredCount = -1;
  #rowCount: number;
  #previousHash: Uint8Array;
  #last: Moment | undefined;
  #isProved = false;

  /**
   * With a `signer` each hand-in is sealed, and each decision that is; its anchor is kept in the folder `elsewhere` too.
   */
  constructor(database: Connection, path: string, clock: Clock, signer?: LogSigner, elsewhere?: string) {
    this.#signer = signer;
    this.#elsewhere = elsewhere;
    this.#database = database;
    this.#path = path;
    this.#clock = clock;
    this.#tables = new LogTables(database);
    // Made once: making it takes longer than a write.
    this.#writeWhole = database.transaction((rows: readonly LogRow[], alongside?: () => void) => {
      alongside?.();
      this.#tables.write(rows, this.#rowCount);
    });
    this.#fileId = fileIdOf(path);
    try {
      this.#tables.attempts.bringUpToDate();
      this.benchId = this.#makeBench();
      const last = database
        .prepare<[string], { boot: number }>(
          "SELECT boot FROM log WHERE bench_id = ? ORDER BY boot DESC, sequence DESC LIMIT 1",
        )
        .get(this.benchId);
      const end = database
        .prepare<[string], { row_count: number; hash: Uint8Array }>(
          "SELECT row_count, hash FROM log_end WHERE bench_id = ?",
        )
        .get(this.benchId);
      this.boot = (last?.boot ?? 0) + 1;
      this.#rowCount = end?.row_count ?? 0;
      this.#previousHash = end?.hash ?? noHash;
    } catch (error) {
      throw toStoreError(error, path);
    }
  }

  /** How many records there are. */
  get rowCount(): number {
    return this.#rowCount;
  }

  /** The key that hand-ins are sealed with; undefined where they are not. */
  get publicKey(): string | undefined {
    return this.#signer?.publicKey;
  }

  #makeBench(): string {
    this.#database
      .prepare(
        "INSERT INTO bench (one, bench_id, made_wall_ms) VALUES (1, ?, ?) ON CONFLICT (one) DO NOTHING",
      )
      .run(uuidV7(), Math.round(this.#clock.wallMs()));
    const made = this.#database.prepare<[], { bench_id: string }>("SELECT bench_id FROM bench").get();
    return made?.bench_id ?? "";
  }

  /**
   * Appends events in their order, all or none, and the table of attempts with them; returns when they are on the
   * disk. `alongside` writes what they tell of into other tables, in the same transaction.
   *
   * @throws StoreError `disk-full` and others; then nothing of it is in the log.
   */
  append(events: readonly NewEvent[], alongside?: () => void): LogRow[] {
    const now = {
      monotonicMs: Math.round(this.#clock.monotonicMs()),
      wallMs: Math.round(this.#clock.wallMs()),
    };
    const rows = this.#sealed(
      this.#rowsOf([...this.#jump(now, events[0]?.attemptId ?? null), ...events], now),
      now,
    );
    const end = rows.at(-1);
    if (!end) return [];
    this.#assertThere();
    const beganMs = this.#clock.monotonicMs();
    try {
      this.#writeWhole(rows, alongside);
      this.commits.took(this.#clock.monotonicMs() - beganMs);
      if (!this.#isProved) assertDurable(this.#database, this.#path);
      this.#isProved = true;
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
    this.#sequence += rows.length;
    this.#rowCount += rows.length;
    this.#previousHash = end.hash;
    this.#last = now;
    // A folder that was taken away takes what is written into it along: nobody is told that it is kept.
    this.#assertThere();
    if (rows.some(({ type }) => isSigned(type))) this.checkpoint();
    return rows;
  }

  /**
   * Brings what lies in the write-ahead file into the main one, as far as nobody reads it. It takes nothing from what
   * is durable already, so what stands in its way is left for the next append to say. How far the log has come is kept
   * outside it.
   */
  checkpoint(): void {
    try {
      this.#database.pragma("wal_checkpoint(PASSIVE)");
      const anchor = this.#anchor();
      if (anchor) keepAnchor(this.#path, anchor);
      if (anchor && this.#elsewhere !== undefined) keepAnchorIn(this.#elsewhere, this.#path, anchor);
      this.#anchoredCount = this.#rowCount;
    } catch (error) {
      const storeError = toStoreError(error, this.#path);
      if (storeError.code === "damaged") throw storeError;
    }
  }

  /** As `checkpoint`, where something was written since the last. */
  checkpointIfNew(): void {
    if (this.#rowCount !== this.#anchoredCount) this.checkpoint();
  }

  /** How far the log has come, for whoever keeps it elsewhere. @throws StoreError */
  get anchor(): LogAnchor | undefined {
    try {
      return this.#anchor();
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
  }

  #anchor(): LogAnchor | undefined {
    const last = this.#database
      .prepare<[string], { boot: number; sequence: number; hash: Uint8Array }>(
        "SELECT boot, sequence, hash FROM log WHERE bench_id = ? ORDER BY boot DESC, sequence DESC LIMIT 1",
      )
      .get(this.benchId);
    if (!last) return undefined;
    const { boot, sequence, hash } = last;
    return { benchId: this.benchId, boot, sequence, rowCount: this.#rowCount, head: hexOf(hash) };
  }

  /** @throws StoreError `damaged` where the file is no longer the one that was opened. */
  #assertThere(): void {
    if (fileIdOf(this.#path) !== this.#fileId)
      throw new StoreError("damaged", { path: this.#path, reason: "the file is no longer where it was" });
  }

  /**
   * Writes an event of an attempt at the end of the log and takes it back, so that a page that is damaged where the
   * log goes on is known before anybody works.
   *
   * @throws StoreError `damaged`, and others.
   */
  tryOut(attemptId: string = uuidV7()): void {
    const takenBack = new Error("taken back");
    const now = { monotonicMs: 0, wallMs: 0 };
    const [row] = this.#rowsOf([{ attemptId, type: "boot", author: byBench, content: {} }], now);
    try {
      this.#database.transaction(() => {
        if (row) this.#tables.write([row], this.#rowCount);
        throw takenBack;
      })();
    } catch (error) {
      if (error !== takenBack) throw toStoreError(error, this.#path);
    }
  }

  /**
   * Keeps a document (board, scenario, rule pack, criteria) once, under the hash of its bytes, which it returns in
   * hexadecimal.
   *
   * @throws StoreError as `append`.
   */
  keepDocument(kind: DocumentKind, bytes: Uint8Array): string {
    const hash = hashOfBytes(bytes);
    try {
      this.#tables.keepDocument(hash, kind, bytes);
    } catch (error) {
      throw toStoreError(error, this.#path);
    }
    return hexOf(hash);
  }

  #jump(now: Moment, attemptId: string | null): NewEvent[] {
    if (!this.#last) return [];
    const expectedWallMs = this.#last.wallMs + (now.monotonicMs - this.#last.monotonicMs);
    if (Math.abs(now.wallMs - expectedWallMs) <= jumpMs) return [];
    const content = { expectedWallMs, wallMs: now.wallMs };
    return [{ attemptId, type: "clock-jumped", author: byBench, content }];
  }

  /** Rows with a seal behind them where work was handed in or a decision sealed: the bench's signature over the last of them. */
  #sealed(rows: LogRow[], now: Moment): LogRow[] {
    const signed = rows.find(({ type }) => isSigned(type));
    const last = rows.at(-1);
    if (!this.#signer || !signed || !last) return rows;
    const head = hexOf(last.hash);
    const content = { attempt: signed.attemptId, head, signature: this.#signer.signatureOf(head) };
    const seal: NewEvent = { attemptId: null, type: "sealed", author: byBench, content };
    const after = { previousHash: last.hash, sequence: last.sequence + 1 };
    return [...rows, ...this.#rowsOf([seal], now, after)];
  }

  #rowsOf(
    events: readonly NewEvent[],
    now: Moment,
    after: { previousHash: Uint8Array; sequence: number } = {
      previousHash: this.#previousHash,
      sequence: this.#sequence,
    },
  ): LogRow[] {
    let { previousHash } = after;
    return events.map(({ attemptId, type, author, content }, index) => {
      const unhashed = {
        benchId: this.benchId,
        boot: this.boot,
        sequence: after.sequence + index,
        attemptId,
        type,
        bytes: bytesOfEvent(content, author),
        previousHash,
        ...now,
        clockState: this.#clock.state(),
      };
      const row = { ...unhashed, hash: hashOfRow(unhashed) };
      previousHash = row.hash;
      return row;
    });
  }
}
